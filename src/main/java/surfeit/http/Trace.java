package surfeit.http;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;

/** A stack trace without the messages: those of libraries may repeat what a request carried, which no log may hold. */
final class Trace {
    private Trace() {
    }

    /** Kinds of failure and where they happened, from the outermost to the first cause. */
    static String of(Throwable failure) {
        StringBuilder text = new StringBuilder();
        Set<Throwable> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        for (Throwable cause = failure; cause != null && seen.add(cause); cause = cause.getCause()) {
            text.append(cause == failure ? "" : "caused by ").append(cause.getClass().getName()).append('\n');
            for (StackTraceElement frame : cause.getStackTrace()) {
                text.append("    at ").append(frame).append('\n');
            }
        }
        return text.toString();
    }
}
