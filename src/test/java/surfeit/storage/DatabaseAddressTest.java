package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class DatabaseAddressTest {
    @Test
    void only_an_address_of_the_engine_is_taken_and_no_password_is_repeated() {
        assertThatThrownBy(() -> DatabaseAddress.check("mysql://lab:hidden@db/lab")).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("expected an address like jdbc:postgresql://host:5432/database, got \"mysql://***@db/lab\"");
    }

    @Test
    void passwords_in_an_address_are_not_shown() {
        assertThat(DatabaseAddress.shown("jdbc:postgresql://db/lab?user=lab&password=hidden&sslmode=require"))
            .isEqualTo("jdbc:postgresql://db/lab?user=lab&password=***&sslmode=require");
        assertThat(DatabaseAddress.shown("jdbc:postgresql://db/lab?sslpassword=hidden"))
            .isEqualTo("jdbc:postgresql://db/lab?sslpassword=***");
        assertThat(new DatabaseAddress("jdbc:postgresql://db/lab?password=hidden", Optional.of("lab"), Optional.of("hidden")))
            .hasToString("jdbc:postgresql://db/lab");
    }
}
