package surfeit.lab;

import surfeit.segregation.SpotReading;

/** What a spot on record shows by itself. */
public record StoredReading(StoredSpot stored, SpotReading reading) {
}
