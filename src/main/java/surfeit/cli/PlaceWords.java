package surfeit.cli;

import surfeit.lab.Place;

/** Where in an upload something stands, in words for a terminal. */
final class PlaceWords {
    private PlaceWords() {
    }

    /** {@code line 9, column 6 (Cu at%): }, or nothing where there is no place. */
    static String of(Place place) {
        StringBuilder words = new StringBuilder();
        place.line().ifPresent(line -> words.append("line ").append(line));
        place.column().ifPresent(column -> words.append(words.isEmpty() ? "" : ", ").append("column ").append(column));
        place.columnName().ifPresent(name -> words.append(" (").append(name).append(')'));
        place.pointer().ifPresent(pointer -> words.append(words.isEmpty() ? "" : ", ").append("at ").append(pointer));
        return words.isEmpty() ? "" : words.append(": ").toString();
    }
}
