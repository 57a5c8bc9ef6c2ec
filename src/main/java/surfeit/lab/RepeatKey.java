package surfeit.lab;

/**
 * The key a sender gives a request so that sending it again does not do it again.
 *
 * @param who         whose key it is; two senders may use the same text
 * @param key         the text
 * @param fingerprint hash of method, path and body
 */
public record RepeatKey(String who, String key, String fingerprint) {
}
