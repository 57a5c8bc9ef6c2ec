package surfeit.lab;

import surfeit.segregation.screening.SpotReading;

/** What a spot on record shows by itself. */
public record StoredReading(StoredSpot stored, SpotReading reading) {
}
