package surfeit.lab;

import java.util.Optional;

/** The bytes of an upload as they were sent, and what was said of them. */
public interface Upload extends surfeit.intake.Upload {

    /** Media type as sent, without parameters: {@code text/csv}. */
    String mediaType();

    Optional<String> fileName();
}
