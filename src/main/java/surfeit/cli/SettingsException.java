package surfeit.cli;

import java.util.List;

/** Settings that cannot be used; holds every fault, not only the first. */
final class SettingsException extends RuntimeException {
    private final transient List<String> faults;

    SettingsException(List<String> faults) {
        super(faults.size() == 1 ? "1 setting is wrong: " + faults.get(0)
            : faults.size() + " settings are wrong:\n  " + String.join("\n  ", faults));
        this.faults = List.copyOf(faults);
    }

    List<String> faults() {
        return faults;
    }
}
