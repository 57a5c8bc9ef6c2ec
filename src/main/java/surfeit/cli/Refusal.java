package surfeit.cli;

import java.io.PrintWriter;
import java.util.Optional;
import surfeit.lab.Fault;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.report.VisibleText;

/** Tells a refusal on a terminal: what was wrong, and every fault with its place. */
final class Refusal {
    private Refusal() {
    }

    /** A fault and its place on one line; what an upload says in it moves no cursor. */
    static String line(Fault fault) {
        return VisibleText.line(PlaceWords.of(fault.place()) + fault.code().code() + ": " + fault.detail());
    }

    static void print(ProblemException problem, PrintWriter err) {
        String title = problem.problem().title() + " (" + problem.problem().code() + ")";
        if (problem.faults().isEmpty()) {
            err.println(VisibleText.line(title + ": " + problem.getMessage()));
        } else {
            err.println(title + ", " + problem.faultCount() + (problem.faultCount() == 1 ? " fault:" : " faults:"));
        }
        for (Fault fault : problem.faults()) {
            err.println("  " + (fault.code() == problem.problem()
                ? VisibleText.line(PlaceWords.of(fault.place()) + fault.detail()) : line(fault)));
        }
        if (problem.faultCount() > problem.faults().size()) {
            err.println("  … and " + (problem.faultCount() - problem.faults().size()) + " more");
        }
        wayOut(problem.problem()).ifPresent(err::println);
    }

    /** What to type next; the fault itself speaks to every client and cannot say so. */
    private static Optional<String> wayOut(Problem problem) {
        return switch (problem) {
            case UNIT_MISSING -> Optional.of("State it with --unit at% or --unit wt%; import takes --with unit=at%.");
            case ALLOY_UNKNOWN -> Optional.of("The command alloys lists the names; alloys Ag Cu lists those that hold both.");
            default -> Optional.empty();
        };
    }
}
