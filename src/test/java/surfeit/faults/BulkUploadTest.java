package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Uploads larger than all the memory the program has: they are read, checked and recorded piece by piece, and where
 * the connection breaks nothing stays. Invented numbers. More: {@code -Dsurfeit.bulk.rows=1000000}, which runs in the
 * 64 MiB it is said to need.
 */
class BulkUploadTest {
    private static final int ROWS = Integer.getInteger("surfeit.bulk.rows", 150_000);
    /** Memory enough for what is kept of a spot, some 25 bytes, but never for the upload. */
    private static final String MEMORY = ROWS > 200_000 ? "-Xmx64m" : "-Xmx36m";
    /** Makes each row so long that all together are larger than the memory, and still within what is taken. */
    private static final String REMARK = "x".repeat(ROWS > 200_000 ? 20 : 300);

    @TempDir
    Path folder;
    private Path data;
    private Path temporary;

    @BeforeEach
    void makeFolders() throws IOException {
        data = Files.createDirectory(folder.resolve("data"));
        temporary = Files.createDirectory(folder.resolve("temporary"));
    }

    private RunningProgram serve() throws IOException, InterruptedException {
        RunningProgram program = RunningProgram.serve(data, MEMORY, "-Djava.io.tmpdir=" + temporary);
        program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
        return program;
    }

    private static String row(int i) {
        double silver = 60 + (i * 7919 % 1000) / 250.0;
        return String.format(Locale.ROOT, "s%d,P%d,%.2f,%.2f,%s\n", i, i / 5000, silver, 100 - silver, REMARK);
    }

    private static String line(int i) {
        double silver = 60 + (i * 7919 % 1000) / 250.0;
        return String.format(Locale.ROOT, "{\"label\":\"n%d\",\"unit\":\"at%%\",\"particle\":\"P%d\",\"elements\":{\"Ag\":"
            + "%.2f,\"Cu\":%.2f}}%s\n", i, i / 5000, silver, 100 - silver, " ".repeat(REMARK.length()));
    }

    /** Writes one piece of an upload. */
    private interface Piece {
        String text(int i);
    }

    /** Sends the head and so many rows in chunks, without ever holding them; the connection stays open. */
    private static Socket begin(URI address, String mediaType, String head, Piece piece, int rows) throws IOException {
        Socket socket = new Socket(address.getHost(), address.getPort());
        OutputStream out = new BufferedOutputStream(socket.getOutputStream(), 1 << 16);
        out.write(("POST /v1/samples/A7/spots HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: " + mediaType
            + "\r\nTransfer-Encoding: chunked\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
        StringBuilder chunk = new StringBuilder(head);
        for (int i = 0; i < rows; i++) {
            chunk.append(piece.text(i));
            if (chunk.length() > 1 << 15 || i == rows - 1) {
                out.write((Integer.toHexString(chunk.length()) + "\r\n" + chunk + "\r\n").getBytes(StandardCharsets.US_ASCII));
                chunk.setLength(0);
            }
        }
        out.flush();
        return socket;
    }

    private static JsonNode answer(Socket socket) throws IOException {
        try (socket) {
            socket.getOutputStream().write("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(answer).startsWith("HTTP/1.1 201");
            return RecordedSpots.parse(answer.substring(answer.indexOf("\r\n\r\n")));
        }
    }

    private static long count(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().startsWith("surfeit")).count();
        }
    }

    @Test
    void tables_and_lines_larger_than_the_memory_are_recorded() throws Exception {
        try (RunningProgram program = serve()) {
            JsonNode table = answer(begin(program.address(), "text/csv", "label,particle,Ag at%,Cu at%,Remark\n",
                BulkUploadTest::row, ROWS));
            JsonNode lines = answer(begin(program.address(), "application/x-ndjson", "", BulkUploadTest::line,
                ROWS / 2));

            Figures.print("uploads larger than the memory", table.path("accepted_count").asInt() + " spots as a table and "
                + lines.path("accepted_count").asInt() + " as lines acknowledged with " + MEMORY + ", "
                + table.at("/file/byte_count").asLong() + " and " + lines.at("/file/byte_count").asLong() + " bytes");
            assertThat(table.path("accepted_count").asInt()).isEqualTo(ROWS);
            assertThat(lines.path("accepted_count").asInt()).isEqualTo(ROWS / 2);
            assertThat(RecordedSpots.parse(program.get("/v1/samples").body()).at("/items/0/spot_count").asInt(-1))
                .isEqualTo(ROWS + ROWS / 2);
            assertThat(RecordedSpots.parse(program.get("/v1/samples/A7/segregation").body()).path("spot_count").asInt())
                .isEqualTo(ROWS + ROWS / 2);
            assertThat(count(temporary)).isZero();
            assertThat(program.log()).isEmpty();
        }
    }

    @Test
    void of_an_upload_whose_connection_breaks_nothing_stays() throws Exception {
        try (RunningProgram program = serve()) {
            for (String mediaType : List.of("text/csv", "application/x-ndjson")) {
                boolean table = mediaType.equals("text/csv");
                Socket broken = begin(program.address(), mediaType, table ? "label,particle,Ag at%,Cu at%,Remark\n" : "",
                    table ? BulkUploadTest::row : BulkUploadTest::line, 20_000);
                broken.setSoLinger(true, 0);
                broken.close();
            }
            Thread.sleep(1000);

            assertThat(RecordedSpots.parse(program.get("/v1/samples").body()).at("/items/0/spot_count").asInt(-1)).isZero();
            assertThat(program.get("/v1/imports/imp_0001").statusCode()).isEqualTo(404);
            assertThat(count(temporary)).isZero();
            assertThat(program.log()).isEmpty();
            JsonNode whole = answer(begin(program.address(), "text/csv", "label,particle,Ag at%,Cu at%,Remark\n",
                BulkUploadTest::row, 20_000));
            assertThat(whole.path("accepted_count").asInt()).isEqualTo(20_000);
            Figures.print("broken connections under uploads", "2 broken off, nothing on record and no file left; the same "
                + "again: " + whole.path("accepted_count").asInt() + " spots acknowledged");
        }
    }

    @Test
    void a_program_killed_under_an_upload_leaves_no_file_behind() throws Exception {
        try (RunningProgram program = serve()) {
            Socket open = begin(program.address(), "text/csv", "label,particle,Ag at%,Cu at%,Remark\n",
                BulkUploadTest::row, 20_000);
            Thread.sleep(500);
            program.kill();
            open.close();
        }
        assertThat(count(temporary)).isZero();
    }
}
