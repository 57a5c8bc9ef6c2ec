package surfeit.intake;

import java.io.IOException;

/** What has come of an upload so far does not do to read it: it is to be read again when it is whole. */
public final class UnfinishedUploadException extends IOException {

    public UnfinishedUploadException(String why) {
        super(why);
    }
}
