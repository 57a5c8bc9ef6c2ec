package surfeit.report.figure;

/** How a text is set: size in the figure's own unit (a CSS pixel where it is not scaled), weight, ink, and side. */
record Type(double size, boolean bold, Ink ink, Anchor anchor) {
    static final Type TITLE = new Type(16, true, Ink.TEXT, Anchor.START);
    static final Type BODY = new Type(12.5, false, Ink.TEXT, Anchor.START);
    static final Type SMALL = new Type(11.5, false, Ink.MUTED, Anchor.START);

    /** Which point of the text its position names. */
    enum Anchor {
        START("start"), MIDDLE("middle"), END("end");

        private final String word;

        Anchor(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    Type strong() {
        return new Type(size, true, ink, anchor);
    }

    Type in(Ink other) {
        return new Type(size, bold, other, anchor);
    }

    Type middle() {
        return new Type(size, bold, ink, Anchor.MIDDLE);
    }

    Type end() {
        return new Type(size, bold, ink, Anchor.END);
    }
}
