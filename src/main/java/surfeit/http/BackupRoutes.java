package surfeit.http;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import surfeit.lab.AuditHead;
import surfeit.lab.Backup;
import surfeit.lab.BackupReport;
import surfeit.lab.Laboratory;

/** The whole record as one file, made and checked while work goes on, then sent. */
final class BackupRoutes {
    private static final String MEDIA_TYPE = "application/vnd.sqlite3";
    private static final DateTimeFormatter NAME =
        DateTimeFormatter.ofPattern("'surfeit-'uuuu-MM-dd'T'HHmmss'Z.backup'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final Laboratory laboratory;

    BackupRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(Route.get("/v1/backup", Scope.ADMIN).forms(Form.FILE).to(this::backup));
    }

    /** What only the head is wanted of is not made. */
    private void backup(Exchange exchange) throws IOException {
        Instant now = exchange.now();
        exchange.answer().header("Cache-Control", "no-store");
        exchange.answer().header("Content-Disposition", "attachment; filename=\"" + NAME.format(now) + "\"");
        exchange.answer().header("X-Content-Type-Options", "nosniff");
        if (exchange.answer().isHead()) {
            exchange.answer().stream(MEDIA_TYPE).close();
            return;
        }
        try (Backup backup = laboratory.backup(now)) {
            BackupReport report = backup.report();
            AuditHead head = report.audit().head();
            exchange.answer().header("Repr-Digest", "sha-256=:"
                + Base64.getEncoder().encodeToString(HexFormat.of().parseHex(report.sha256())) + ":");
            exchange.answer().header("Audit-Head", head.count() + ":" + head.hash());
            try (OutputStream out = exchange.answer().stream(MEDIA_TYPE, report.byteCount())) {
                backup.bytes().transferTo(out);
            }
        }
    }
}
