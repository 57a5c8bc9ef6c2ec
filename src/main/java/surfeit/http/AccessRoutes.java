package surfeit.http;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.List;
import surfeit.http.json.AuditDocuments;
import surfeit.http.json.TokenDocuments;
import surfeit.http.json.TokenJson;
import surfeit.lab.Access;
import surfeit.lab.AuditEntry;
import surfeit.lab.AuditHead;
import surfeit.lab.IssuedToken;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.Token;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenSecret;

/** Who may use the service, and who did what. */
final class AccessRoutes {
    private static final String TOKENS = "/v1/tokens";
    private static final SecureRandom RANDOM = new SecureRandom();

    private final Laboratory laboratory;
    private final Access access;

    AccessRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
        this.access = laboratory.access();
    }

    List<Route> routes() {
        return List.of(
            Route.get(TOKENS, Scope.ADMIN).parameters("page_size", "cursor").to(this::list),
            Route.post(TOKENS, Scope.ADMIN).to(this::issue),
            Route.get(TOKENS + "/{id}", Scope.ADMIN).to(this::read),
            Route.delete(TOKENS + "/{id}", Scope.ADMIN).to(this::revoke),
            Route.get("/v1/audit", Scope.ADMIN).parameters("page_size", "cursor").to(this::audit));
    }

    private void list(Exchange exchange) throws IOException {
        if (exchange.answer().unchanged(laboratory.auditLog().head().count())) {
            return;
        }
        Page<Token> page = access.tokens(exchange.page());
        var next = exchange.next(page.next());
        exchange.answer().json(200, json -> TokenDocuments.write(json, page.items(), next));
    }

    private void issue(Exchange exchange) throws IOException {
        TokenRequest wanted;
        try (Body body = exchange.body().receive()) {
            wanted = TokenJson.read(body.open());
        }
        byte[] random = new byte[TokenSecret.RANDOM_BYTES];
        RANDOM.nextBytes(random);
        IssuedToken issued = access.issue(wanted, random, exchange.occasion());
        exchange.answer().header("Location", TOKENS + "/" + issued.token().id());
        exchange.answer().header("Cache-Control", "no-store");
        exchange.answer().json(201, json -> TokenDocuments.write(json, issued));
    }

    private void read(Exchange exchange) throws IOException {
        Token token = access.token(exchange.path("id"));
        if (!exchange.answer().unchanged(token.revoked().isPresent() ? 2 : 1)) {
            exchange.answer().json(200, json -> TokenDocuments.write(json, token));
        }
    }

    private void revoke(Exchange exchange) throws IOException {
        Token token = access.revoke(exchange.path("id"), exchange.occasion());
        exchange.answer().header("Cache-Control", "no-store");
        exchange.answer().json(200, json -> TokenDocuments.write(json, token));
    }

    private void audit(Exchange exchange) throws IOException {
        AuditHead head = laboratory.auditLog().head();
        if (exchange.answer().unchanged(head.count())) {
            return;
        }
        Page<AuditEntry> page = laboratory.auditLog().page(exchange.page());
        var next = exchange.next(page.next());
        exchange.answer().json(200, json -> AuditDocuments.write(json, page.items(), head, next));
    }
}
