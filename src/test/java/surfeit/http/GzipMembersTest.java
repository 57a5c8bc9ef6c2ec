package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.ZipException;
import org.junit.jupiter.api.Test;

/** A compressed upload is read whole or refused, in however many members and pieces it comes. Invented numbers. */
class GzipMembersTest {
    private static final String FIRST = "label,Ag at%,Cu at%\na,60.1,39.9\n";
    private static final String SECOND = "b,61.3,38.7\nc,62.2,37.8\n";
    private static final String SPOTS = "/v1/samples/A7/spots";

    private static byte[] gzip(String text) {
        return RunningService.gzip(text.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] joined(byte[]... parts) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            all.writeBytes(part);
        }
        return all.toByteArray();
    }

    /** Gives a few bytes at a time and never says that more are there, as a network does. */
    private static InputStream inPieces(byte[] bytes, int most) {
        return new FilterInputStream(new ByteArrayInputStream(bytes)) {
            @Override
            public int read(byte[] into, int offset, int length) throws IOException {
                return super.read(into, offset, Math.min(length, most));
            }

            @Override
            public int available() {
                return 0;
            }
        };
    }

    private static String inflated(InputStream bytes) throws IOException {
        try (InputStream in = new GzipMembers(bytes)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void all_members_are_read_in_whatever_pieces_they_come() throws IOException {
        byte[] bytes = joined(gzip(FIRST), gzip(""), gzip(SECOND.repeat(5000)));
        for (int most = 1; most < 200; most++) {
            assertThat(inflated(inPieces(bytes, most))).isEqualTo(FIRST + SECOND.repeat(5000));
        }
    }

    @Test
    void a_member_may_name_its_file_and_carry_a_comment_an_extra_field_and_a_sum_of_its_head() throws IOException {
        byte[] plain = gzip(FIRST);
        byte[] head = {0x1f, (byte) 0x8b, 8, 2 | 4 | 8 | 16, 1, 2, 3, 4, 0, 3, 3, 0, 'x', 'y', 'z', 'n', 0, 'c', 'c', 0};
        CRC32 sum = new CRC32();
        sum.update(head);
        byte[] sumOfHead = {(byte) sum.getValue(), (byte) (sum.getValue() >> 8)};
        byte[] dressed = joined(head, sumOfHead, Arrays.copyOfRange(plain, 10, plain.length));
        assertThat(inflated(inPieces(joined(dressed, dressed), 3))).isEqualTo(FIRST + FIRST);
    }

    @Test
    void cut_anywhere_but_between_members_it_is_refused() {
        byte[] first = gzip(FIRST);
        byte[] bytes = joined(first, gzip(SECOND));
        for (int length = 0; length < bytes.length; length++) {
            byte[] cut = Arrays.copyOf(bytes, length);
            if (length != first.length) {
                assertThatThrownBy(() -> inflated(inPieces(cut, 7))).as("cut after " + length)
                    .isInstanceOf(EOFException.class);
            }
        }
    }

    @Test
    void whatever_follows_the_last_member_and_is_none_is_refused() {
        for (byte[] more : new byte[][] {{0}, {0x1f}, {0x1f, (byte) 0x8b, 9}, "JUNK".getBytes(StandardCharsets.US_ASCII),
            {0x1f, (byte) 0x8b, 8, (byte) 0x80}}) {
            assertThatThrownBy(() -> inflated(inPieces(joined(gzip(FIRST), more), 5)))
                .isInstanceOfAny(ZipException.class, EOFException.class);
        }
    }

    @Test
    void with_any_bit_turned_over_it_is_refused_or_says_the_same() {
        byte[] bytes = joined(gzip(FIRST), gzip(SECOND));
        int refused = 0;
        for (int bit = 0; bit < bytes.length * 8; bit++) {
            byte[] damaged = bytes.clone();
            damaged[bit / 8] ^= (byte) (1 << bit % 8);
            try {
                assertThat(inflated(inPieces(damaged, 11))).as("bit " + bit).isEqualTo(FIRST + SECOND);
            } catch (IOException e) {
                refused++;
            }
        }
        assertThat(refused).isGreaterThan(bytes.length * 6);
    }

    @Test
    void members_that_arrive_one_after_the_other_are_recorded_all() throws Exception {
        byte[] first = gzip(FIRST);
        byte[] second = gzip(SECOND);
        try (RunningService service = RunningService.start(); RawRequest request = new RawRequest(service)) {
            service.put("/v1/samples/A7", InventedPowder.SAMPLE);
            request.head("POST", SPOTS, "text/csv", first.length + second.length, "Content-Encoding: gzip").send(first);
            Thread.sleep(200);
            RawRequest.Answer answer = request.send(second).answer();
            assertThat(OpenApi.parse(answer.body()).path("accepted_count").asInt()).isEqualTo(3);
        }
    }

    @Test
    void of_members_that_are_damaged_or_never_arrive_nothing_is_recorded() throws Exception {
        byte[] first = gzip(FIRST);
        try (RunningService service = RunningService.start()) {
            service.put("/v1/samples/A7", InventedPowder.SAMPLE);
            byte[] damaged = gzip(SECOND);
            damaged[1] ^= 1;
            assertThat(service.send("POST", SPOTS, joined(first, damaged), "Content-Type", "text/csv",
                "Content-Encoding", "gzip").code()).isEqualTo("malformed-request");
            try (Socket socket = new Socket("127.0.0.1", service.server().port())) {
                socket.getOutputStream().write(joined(("POST " + SPOTS + " HTTP/1.1\r\nHost: localhost\r\n"
                    + "Content-Type: text/csv\r\nContent-Encoding: gzip\r\nContent-Length: " + 2 * first.length
                    + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII), first));
                Thread.sleep(200);
                socket.setSoLinger(true, 0);
            }
            Thread.sleep(200);
            assertThat(service.get(SPOTS).json().path("items")).isEmpty();
        }
    }
}
