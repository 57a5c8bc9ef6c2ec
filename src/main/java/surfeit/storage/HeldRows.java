package surfeit.storage;

import java.sql.PreparedStatement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a transaction is to write, held until a question needs it or the commit comes. Sent together, the rows of many
 * small jobs cost a server one exchange for each kind of statement, not one for each row; and a file needs no savepoints.
 *
 * <p>Statements are sent by kind, each kind where it first came, so that only those may be held that do not depend on the
 * order between kinds, other than that a row comes after those it refers to. A step is a part that can be taken back by
 * itself: by forgetting what it holds or, once something of it was sent, by a savepoint, which is set just before. Not
 * thread-safe.
 */
final class HeldRows {
    /** Rows held at most. Judgement: some ten for each job of a shared commit. */
    private static final int ROWS_MAX = 1024;
    /** Bytes of files and spots held at most. Judgement: little beside what a commit of a server takes. */
    private static final long BYTES_MAX = 1 << 20;

    private final KeptStatements statements;
    private final List<Row> rows = new ArrayList<>();
    private final Set<Object> things = new HashSet<>();
    private final List<Step> steps = new ArrayList<>();
    private long bytes;

    private record Row(String sql, Object[] values) {
    }

    /** A part of the transaction. */
    private static final class Step {
        private final String savepoint;
        /** How many of the rows held come before it, as long as the savepoint is not set. */
        private int first;
        private boolean set;

        Step(String savepoint, int first) {
            this.savepoint = savepoint;
            this.first = first;
        }
    }

    HeldRows(KeptStatements statements) {
        this.statements = statements;
    }

    void add(String sql, Object... values) {
        rows.add(new Row(sql, values));
        for (Object value : values) {
            bytes += value instanceof byte[] some ? some.length : 0;
        }
        if (rows.size() >= ROWS_MAX || bytes >= BYTES_MAX) {
            send();
        }
    }

    /** Notes that what is held tells of something, so that who asks about it has it sent first. */
    void tell(Object thing) {
        things.add(thing);
    }

    boolean tells(Object thing) {
        return things.contains(thing);
    }

    /** Sends what is held. */
    void send() {
        if (rows.isEmpty()) {
            return;
        }
        int from = 0;
        for (Step step : steps) {
            if (!step.set) {
                send(rows.subList(from, step.first));
                from = step.first;
                if (from < rows.size()) {
                    set(step);
                }
                step.first = 0;
            }
        }
        send(rows.subList(from, rows.size()));
        forget();
    }

    /** The same, before a statement that is not held. */
    void sendBefore(String sql) {
        send();
        if (sql.startsWith("SELECT")) {
            return;
        }
        for (Step step : steps) {
            if (!step.set) {
                set(step);
            }
        }
    }

    private void send(List<Row> some) {
        Map<String, List<Object[]>> kinds = new LinkedHashMap<>();
        some.forEach(row -> kinds.computeIfAbsent(row.sql, sql -> new ArrayList<>()).add(row.values));
        kinds.forEach((sql, all) -> statements.use(sql, statement -> PlainSql.batch(statement, all)));
    }

    private void set(Step step) {
        run("SAVEPOINT " + step.savepoint);
        step.set = true;
    }

    private void run(String sql) {
        statements.use(sql, PreparedStatement::execute);
    }

    private void forget() {
        rows.clear();
        things.clear();
        bytes = 0;
    }

    /** Begins a step, within the one that is under way. */
    void begin() {
        steps.add(new Step("step" + steps.size(), rows.size()));
    }

    /** Ends the step under way; what it wrote becomes part of what is around it. */
    void keep() {
        Step step = steps.remove(steps.size() - 1);
        if (step.set) {
            run("RELEASE SAVEPOINT " + step.savepoint);
        }
    }

    /** Ends the step under way and takes back what it wrote. */
    void takeBack() {
        Step step = steps.remove(steps.size() - 1);
        if (step.set) {
            forget();
            run("ROLLBACK TO SAVEPOINT " + step.savepoint);
            run("RELEASE SAVEPOINT " + step.savepoint);
        } else {
            rows.subList(step.first, rows.size()).clear();
        }
    }

    /** The transaction is over. */
    void end() {
        forget();
        steps.clear();
    }
}
