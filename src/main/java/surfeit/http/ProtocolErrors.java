package surfeit.http;

import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** Refusals of requests that never reach a route: bad HTTP, too long an address, too large headers. */
final class ProtocolErrors extends ErrorHandler {

    private final int headerBytesMax;

    ProtocolErrors(int headerBytesMax) {
        this.headerBytesMax = headerBytesMax;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        String id = Refusals.requestId(request.getHeaders().get("X-Request-Id"));
        Problem problem = problem(response.getStatus());
        response.setStatus(problem.status());
        byte[] bytes = ProblemJson.of(refusal(problem), id);
        SecurityHeaders.put(response.getHeaders());
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, ProblemJson.MEDIA_TYPE);
        response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
        response.getHeaders().put("X-Request-Id", id);
        if (problem != Problem.NOT_FOUND && problem != Problem.INTERNAL) {
            // nobody knows where the next request would begin
            response.getHeaders().put(HttpHeader.CONNECTION, "close");
        }
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, bytes.length);
        response.write(true, ByteBuffer.wrap(bytes), callback);
        return true;
    }

    /** Another version of HTTP (505) and an unknown transfer coding (501) are the client's doing. */
    private static Problem problem(int status) {
        if (status == HttpStatus.NOT_IMPLEMENTED_501 || status == HttpStatus.HTTP_VERSION_NOT_SUPPORTED_505) {
            return Problem.MALFORMED_REQUEST;
        }
        for (Problem each : Problem.values()) {
            if (each.status() == status && (status != 400 || each == Problem.MALFORMED_REQUEST)) {
                return each;
            }
        }
        return status >= 500 ? Problem.INTERNAL : Problem.NOT_FOUND;
    }

    private ProblemException refusal(Problem problem) {
        ProblemException refusal = new ProblemException(problem, detail(problem));
        return problem == Problem.ADDRESS_TOO_LONG || problem == Problem.HEADERS_TOO_LARGE
            ? refusal.withSetting(RequestLimits.HEADER_BYTES_SETTING) : refusal;
    }

    private String detail(Problem problem) {
        return switch (problem) {
            case ADDRESS_TOO_LONG -> "The address with its parameters is longer than " + headerBytesMax + " bytes.";
            case HEADERS_TOO_LARGE -> "The address and the header fields take more than " + headerBytesMax + " bytes.";
            case REQUEST_TIMEOUT -> "The request came too slowly.";
            case INTERNAL -> "The request could not be answered for a reason that is not its fault.";
            case NOT_FOUND -> "Nothing answers at this address.";
            default -> "The request is not HTTP as RFC 9112 has it, or its address holds characters it must not.";
        };
    }
}
