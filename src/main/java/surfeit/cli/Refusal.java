package surfeit.cli;

import java.io.PrintWriter;
import surfeit.lab.Fault;
import surfeit.lab.ProblemException;

/** Tells a refusal on a terminal: what was wrong, and every fault with its place. */
final class Refusal {
    private Refusal() {
    }

    static void print(ProblemException problem, PrintWriter err) {
        err.println(problem.problem().title() + " (" + problem.problem().code() + "): " + problem.getMessage());
        for (Fault fault : problem.faults()) {
            err.println("  " + PlaceWords.of(fault.place()) + fault.code().code() + ": " + fault.detail());
        }
        if (problem.faultCount() > problem.faults().size()) {
            err.println("  … and " + (problem.faultCount() - problem.faults().size()) + " more");
        }
    }
}
