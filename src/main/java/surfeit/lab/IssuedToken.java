package surfeit.lab;

/**
 * A token at the moment it is made: the only time its secret is known.
 *
 * @param secret {@code lab_…}, to be shown once and kept nowhere
 */
public record IssuedToken(Token token, String secret) {
    /** Without the secret, so that it gets into no log by accident. */
    @Override
    public String toString() {
        return "IssuedToken[" + token + "]";
    }
}
