package surfeit.http;

/** The service would be open to other machines without anybody having said so. */
public final class UnsafeStartException extends RuntimeException {
    UnsafeStartException(String host) {
        super("host " + host + " can be reached from other machines, and no token exists. Make one (token new --name me"
            + " --scopes read,write,correct,admin), listen on 127.0.0.1, or say --no-auth.");
    }
}
