package surfeit.http.docs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;

/** How shapes of an OpenAPI document become JSON Schemas. */
class SharedSchemasTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String HEAD = "\"externalDocs\": {\"url\": \"/shared/schemas/spot.json\"}";

    @Test
    void a_shape_becomes_a_file_only_where_it_names_one_and_takes_along_what_it_refers_to() throws Exception {
        JsonNode made = made("\"Spot\": {%s, \"properties\": {\"unit\": {\"$ref\": \"#/components/schemas/Unit\"}, \"under\": "
            .formatted(HEAD) + "{\"oneOf\": [{\"type\": \"null\"}, {\"$ref\": \"#/components/schemas/Spot\"}]}}}, "
            + "\"Unit\": {\"enum\": [\"at%\"]}, \"Other\": {\"type\": \"string\"}");
        assertThat(made).isEqualTo(JSON.readTree("""
            {"$schema": "https://json-schema.org/draft/2020-12/schema", "$id": "/shared/schemas/spot.json",
             "properties": {"unit": {"$ref": "#/$defs/Unit"}, "under": {"oneOf": [{"type": "null"}, {"$ref": "#/$defs/Spot"}]}},
             "$defs": {"Unit": {"enum": ["at%"]}, "Spot": {"properties": {"unit": {"$ref": "#/$defs/Unit"},
               "under": {"oneOf": [{"type": "null"}, {"$ref": "#/$defs/Spot"}]}}}}}"""));
    }

    @Test
    void words_of_openapi_alone_are_turned_or_left_off_and_keys_of_those_names_stay() throws Exception {
        JsonNode made = made("\"Spot\": {%s, \"discriminator\": {\"propertyName\": \"a\"}, \"x-unit\": \"nm\", "
            .formatted(HEAD) + "\"example\": {\"nullable\": 1}, \"format\": \"int64\", "
            + "\"description\": \"one\\ntwo\\n\\nthree\\n\", "
            + "\"properties\": {\"example\": {\"format\": \"date-time\"}, \"discriminator\": {\"const\": {\"xml\": 1}}}}");
        assertThat(made).isEqualTo(JSON.readTree("""
            {"$schema": "https://json-schema.org/draft/2020-12/schema", "$id": "/shared/schemas/spot.json",
             "examples": [{"nullable": 1}], "description": "one two\\n\\nthree",
             "properties": {"example": {"format": "date-time"}, "discriminator": {"const": {"xml": 1}}}}"""));
    }

    @Test
    void a_word_that_json_schema_does_not_know_and_a_reference_to_nothing_stop_the_build() {
        assertThatThrownBy(() -> made("\"Spot\": {%s, \"items\": {\"nullable\": true}}".formatted(HEAD)))
            .isInstanceOf(IllegalStateException.class).hasMessageContaining("nullable");
        for (String reference : new String[] {"#/components/schemas/Unit", "#/components/examples/spot", "other.json"}) {
            assertThatThrownBy(() -> made("\"Spot\": {%s, \"items\": {\"$ref\": \"%s\"}}".formatted(HEAD, reference)))
                .isInstanceOf(IllegalStateException.class).hasMessageContaining(reference);
        }
    }

    private static JsonNode made(String shapes) throws JsonProcessingException {
        var files = new SharedSchemas(JSON.readTree("{\"components\": {\"schemas\": {" + shapes + "}}}")).byFile();
        assertThat(files).containsOnlyKeys("spot.json");
        return files.get("spot.json");
    }
}
