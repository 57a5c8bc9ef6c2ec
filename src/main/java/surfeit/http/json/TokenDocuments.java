package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.lab.IssuedToken;
import surfeit.lab.Token;
import surfeit.lab.TokenScope;

/** Writes tokens: without their secrets, but once. */
public final class TokenDocuments {
    private TokenDocuments() {
    }

    public static void write(JsonGenerator json, Token token) throws IOException {
        json.writeStartObject();
        writeFields(json, token);
        json.writeEndObject();
    }

    /** A token at the moment it is made, with its secret. */
    public static void write(JsonGenerator json, IssuedToken issued) throws IOException {
        json.writeStartObject();
        json.writeStringField("token", issued.secret());
        writeFields(json, issued.token());
        json.writeEndObject();
    }

    /** A page of them. */
    public static void write(JsonGenerator json, List<Token> tokens, Optional<String> next) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (Token token : tokens) {
            write(json, token);
        }
        json.writeEndArray();
        Written.text(json, "next", next);
        json.writeEndObject();
    }

    private static void writeFields(JsonGenerator json, Token token) throws IOException {
        json.writeStringField("id", token.id());
        json.writeStringField("name", token.name());
        json.writeArrayFieldStart("scopes");
        for (TokenScope scope : token.scopes()) {
            json.writeString(scope.word());
        }
        json.writeEndArray();
        json.writeStringField("created_time", token.created().when().toString());
        json.writeStringField("created_by", token.created().who());
        json.writeStringField("expires_time", token.expires().toString());
        Written.text(json, "revoked_time", token.revoked().map(by -> by.when().toString()));
        Written.text(json, "revoked_by", token.revoked().map(by -> by.who()));
        FaultDocuments.writeLinks(json, Map.of("self", "/v1/tokens/" + token.id()));
    }
}
