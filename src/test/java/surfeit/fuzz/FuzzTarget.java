package surfeit.fuzz;

import java.util.Set;

/** One way into the program, with everything that must hold whatever comes in. */
@FunctionalInterface
public interface FuzzTarget {

    /**
     * Lets the program read an input and checks what it made of it.
     *
     * @return what was seen, in words that are the same for inputs of the same kind; a new word makes an input worth
     *         altering further
     * @throws Throwable where a promise was broken
     */
    Set<String> run(byte[] input) throws Throwable;
}
