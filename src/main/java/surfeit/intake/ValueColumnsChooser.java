package surfeit.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.element.Spelling;

/**
 * Chooses, among the columns of one element, the one with its values and those that stand beside it.
 *
 * <p>All values of a table have one unit: the stated one, else the one in the headers, else that of a unit column.
 * Where an element is given in both units, the stated one is taken and the other left out; without a statement the
 * table is refused.
 */
final class ValueColumnsChooser {
    private static final List<ColumnMeaning.Kind> COUNTS =
        List.of(ColumnMeaning.Kind.NET_COUNTS, ColumnMeaning.Kind.BACKGROUND_COUNTS);

    private final HeaderReader header;
    private final Optional<Basis> stated;
    private final boolean unitColumn;
    private Optional<Basis> basis = Optional.empty();

    ValueColumnsChooser(HeaderReader header, Optional<Basis> stated, boolean unitColumn) {
        this.header = header;
        this.stated = stated;
        this.unitColumn = unitColumn;
    }

    /** The unit of all values; absent where every row states its own. */
    Optional<Basis> basis() {
        return basis;
    }

    /** The columns to read; empty where there is no value column, or where the header is refused. */
    Optional<ValueColumns> choose(Optional<Element> element, List<Integer> columns) {
        String what = element.map(Element::symbol).orElse("the values");
        Optional<Integer> value = valueColumn(what, columns);
        if (value.isEmpty()) {
            columns.forEach(column -> withoutValue(what, column));
            return Optional.empty();
        }
        if (!settleUnit(what, value.get())) {
            return Optional.empty();
        }
        Map<ColumnMeaning.Kind, Integer> chosen = new EnumMap<>(ColumnMeaning.Kind.class);
        chosen.put(ColumnMeaning.Kind.VALUE, value.get());
        for (int column : columns) {
            addBeside(what, column, chosen);
        }
        leaveOutHalfCounts(chosen);
        int level = Optional.ofNullable(chosen.get(ColumnMeaning.Kind.UNCERTAINTY))
            .map(u -> header.quantity(u).uLevel()).orElse(0);
        return Optional.of(new ValueColumns(element, chosen, level, header.quantity(value.get()).line()));
    }

    private Optional<Integer> valueColumn(String what, List<Integer> columns) {
        List<Integer> values = new ArrayList<>();
        boolean twice = false;
        for (int column : columns) {
            if (header.quantity(column).kind() == ColumnMeaning.Kind.VALUE) {
                Optional<Basis> unit = header.quantity(column).basis();
                Optional<Integer> first =
                    values.stream().filter(other -> header.quantity(other).basis().equals(unit)).findFirst();
                first.ifPresent(other -> header.refuseTwice(other, column, what));
                twice |= first.isPresent();
                values.add(column);
            }
        }
        if (values.size() < 2 || twice) {
            return values.stream().findFirst();
        }
        Optional<Integer> taken = values.stream()
            .filter(column -> stated.isPresent() && header.quantity(column).basis().equals(stated)).findFirst();
        if (taken.isEmpty()) {
            header.refuse(values.get(1), FaultCode.UNIT_MISSING, "one unit for " + what,
                unitOf(values.get(0)) + " and " + unitOf(values.get(1)) + "; state the unit to take");
            return Optional.of(values.get(0));
        }
        values.stream().filter(column -> !taken.get().equals(column))
            .forEach(column ->
                header.leaveOut(column, "in " + unitOf(column) + ", " + unitOf(taken.get()) + " was stated"));
        return taken;
    }

    private boolean settleUnit(String what, int value) {
        Optional<Basis> own = header.quantity(value).basis();
        Optional<Basis> unit = own.isPresent() ? own : stated;
        if (own.isPresent() && stated.isPresent() && !own.equals(stated)) {
            header.refuse(value, FaultCode.UNIT_MISSING, what + " in " + stated.get().unit() + " as stated",
                "it in " + own.get().unit());
            return false;
        }
        if (unit.isEmpty() && !unitColumn) {
            header.refuse(value, FaultCode.UNIT_MISSING,
                "the unit of " + what + ", at% or wt%, in the header or stated with the request", "none");
            return false;
        }
        if (basis.isPresent() && unit.isPresent() && !basis.equals(unit)) {
            header.refuse(value, FaultCode.UNIT_MISSING, "one unit for all elements",
                basis.get().unit() + " and for " + what + " " + unit.get().unit());
            return false;
        }
        basis = basis.isPresent() ? basis : unit;
        return true;
    }

    private void addBeside(String what, int column, Map<ColumnMeaning.Kind, Integer> chosen) {
        ColumnMeaning.Quantity quantity = header.quantity(column);
        if (quantity.kind() == ColumnMeaning.Kind.VALUE) {
            return;
        }
        if (quantity.kind() == ColumnMeaning.Kind.UNCLEAR) {
            header.leaveOut(column, Spelling.quoted(quantity.words()) + " is not understood");
        } else if (quantity.basis().isPresent() && basis.isPresent() && !quantity.basis().equals(basis)) {
            header.leaveOut(column, "in " + quantity.basis().get().unit() + ", the value is in " + basis.get().unit());
        } else {
            if (chosen.containsKey(quantity.kind())) {
                header.refuseTwice(chosen.get(quantity.kind()), column, quantity.kind().words() + " of " + what);
            }
            chosen.put(quantity.kind(), column);
        }
    }

    /** The counting error needs net and background counts; one alone says nothing. */
    private void leaveOutHalfCounts(Map<ColumnMeaning.Kind, Integer> chosen) {
        if (!chosen.keySet().containsAll(COUNTS)) {
            for (ColumnMeaning.Kind kind : COUNTS) {
                Optional.ofNullable(chosen.remove(kind))
                    .ifPresent(column -> header.leaveOut(column, "net and background counts are of use together only"));
            }
        }
    }

    private void withoutValue(String what, int column) {
        if (header.quantity(column).kind() == ColumnMeaning.Kind.UNCLEAR) {
            header.refuse(column, FaultCode.UNREADABLE_TABLE, "a " + header.part() + " of values such as \"" + what + " at%\"",
                "the words " + Spelling.quoted(header.quantity(column).words()) + ", which are not understood");
        } else {
            header.leaveOut(column, "there is no " + header.part() + " with values of " + what);
        }
    }

    private String unitOf(int column) {
        return header.quantity(column).basis().map(Basis::unit).orElse("no unit");
    }
}
