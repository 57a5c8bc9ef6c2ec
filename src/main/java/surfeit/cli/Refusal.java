package surfeit.cli;

import java.io.PrintWriter;
import surfeit.lab.Fault;
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
        err.println(VisibleText.line(problem.problem().title() + " (" + problem.problem().code() + "): "
            + problem.getMessage()));
        for (Fault fault : problem.faults()) {
            err.println("  " + line(fault));
        }
        if (problem.faultCount() > problem.faults().size()) {
            err.println("  … and " + (problem.faultCount() - problem.faults().size()) + " more");
        }
    }
}
