package surfeit.cli;

import surfeit.http.TrustedProxies;
import surfeit.storage.DatabaseAddress;

/** Refuses a text that cannot be a setting's value. */
interface SettingCheck {

    /** @throws IllegalArgumentException saying what was expected */
    void check(String text);

    static SettingCheck notBlank(String expected) {
        return text -> {
            if (text.isBlank()) {
                throw new IllegalArgumentException("expected " + expected + ", got nothing");
            }
        };
    }

    static SettingCheck whole(long least, long most) {
        return text -> {
            try {
                long value = Long.parseLong(text.strip());
                if (value >= least && value <= most) {
                    return;
                }
            } catch (NumberFormatException e) {
                // told below, with the same words as a number out of range
            }
            throw new IllegalArgumentException("expected a whole number from " + least + " to " + most + ", got \""
                + text + "\"");
        };
    }

    static SettingCheck number(double above, double below) {
        return text -> {
            try {
                double value = Double.parseDouble(text.strip());
                if (value > above && value < below) {
                    return;
                }
            } catch (NumberFormatException e) {
                // told below, with the same words as a number out of range
            }
            throw new IllegalArgumentException("expected a number above " + above + " and below " + below + ", got \""
                + text + "\"");
        };
    }

    static SettingCheck trueOrFalse() {
        return text -> {
            if (!text.strip().equals("true") && !text.strip().equals("false")) {
                throw new IllegalArgumentException("expected true or false, got \"" + text + "\"");
            }
        };
    }

    static SettingCheck databaseUrl() {
        return text -> {
            if (!text.strip().equals(Setting.DATABASE_URL.standard())) {
                DatabaseAddress.check(text.strip());
            }
        };
    }

    static SettingCheck proxies() {
        return TrustedProxies::of;
    }
}
