package surfeit.lab;

import surfeit.segregation.contrast.ComparisonAnswer;

/** Two samples on record compared with each other, and the revisions that were compared. */
public record ComparedRecord(StoredSample a, StoredSample b, ComparisonAnswer answer) {
}
