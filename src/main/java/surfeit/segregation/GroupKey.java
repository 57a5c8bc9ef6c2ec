package surfeit.segregation;

import java.util.Optional;

/** What keeps spots together while they are read: group name, beam energy and session, as far as stated. */
record GroupKey(String name, Optional<Double> beamEnergyKev, Optional<String> session) {
}
