package surfeit.intake;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.element.Spelling;

/** What the sender says of a table's dialect; a stated property wins over what the file looks like. */
public record StatedDialect(Optional<Character> delimiter, Optional<Character> decimal, Optional<Charset> charset,
                            Optional<ZoneId> timeZone, Optional<Basis> unit) {
    public static final StatedDialect NOTHING = new StatedDialect(Optional.empty(), Optional.empty(), Optional.empty(),
        Optional.empty(), Optional.empty());

    public StatedDialect {
        if (delimiter.isPresent() && CsvDialect.DELIMITERS.indexOf(delimiter.get()) < 0) {
            throw new IllegalArgumentException("delimiter is , ; tab or |, got " + delimiter.get() + ".");
        }
        if (decimal.isPresent() && decimal.get() != '.' && decimal.get() != ',') {
            throw new IllegalArgumentException("decimal is . or , got " + decimal.get() + ".");
        }
    }

    public StatedDialect withDelimiter(String text) {
        return new StatedDialect(Optional.of(delimiterOf(text)), decimal, charset, timeZone, unit);
    }

    public StatedDialect withDecimal(String text) {
        if (!text.equals(".") && !text.equals(",")) {
            throw new IllegalArgumentException("decimal is . or , got " + Spelling.quoted(text) + ".");
        }
        return new StatedDialect(delimiter, Optional.of(text.charAt(0)), charset, timeZone, unit);
    }

    public StatedDialect withCharset(String text) {
        try {
            return new StatedDialect(delimiter, decimal, Optional.of(Charset.forName(text)), timeZone, unit);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            throw new IllegalArgumentException(
                "charset is a name such as utf-8, utf-16 or windows-1252, got " + Spelling.quoted(text) + ".", e);
        }
    }

    public StatedDialect withTimeZone(String text) {
        try {
            return new StatedDialect(delimiter, decimal, charset, Optional.of(ZoneId.of(text)), unit);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                "time_zone is a zone or offset such as Europe/Berlin or +01:00, got " + Spelling.quoted(text) + ".", e);
        }
    }

    public StatedDialect withUnit(String text) {
        Basis basis = UnitWords.basis(text).orElseThrow(() ->
            new IllegalArgumentException("unit is at% or wt%, got " + Spelling.quoted(text) + "."));
        return new StatedDialect(delimiter, decimal, charset, timeZone, Optional.of(basis));
    }

    private static char delimiterOf(String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case ",", "comma" -> ',';
            case ";", "semicolon" -> ';';
            case "\t", "tab", "\\t" -> '\t';
            case "|", "pipe" -> '|';
            default -> throw new IllegalArgumentException(
                "delimiter is , ; tab or |, got " + Spelling.quoted(text) + ".");
        };
    }
}
