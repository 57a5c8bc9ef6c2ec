package surfeit.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version of the program, from the file the build writes beside its classes. */
public final class ProgramVersion {
    public static final String VERSION = read();

    private ProgramVersion() {
    }

    private static String read() {
        try (InputStream in = ProgramVersion.class.getResourceAsStream("/surfeit.properties")) {
            if (in == null) {
                throw new IllegalStateException("The program's jar lacks surfeit.properties.");
            }
            Properties properties = new Properties();
            properties.load(in);
            return properties.getProperty("version");
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot read surfeit.properties from the program's jar.", e);
        }
    }
}
