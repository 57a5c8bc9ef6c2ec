package surfeit.http;

/**
 * Who is let in.
 *
 * @param noAuth  true where nobody is asked for a token, said aloud
 * @param proxies machines that may say for whom they ask
 */
public record AccessRules(boolean noAuth, TrustedProxies proxies) {
    /** Tokens are asked for once there is one; no machine speaks for another. */
    public static final AccessRules DEFAULT = new AccessRules(false, TrustedProxies.NONE);
}
