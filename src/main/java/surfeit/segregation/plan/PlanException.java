package surfeit.segregation.plan;

/** A question that no plan can answer; the message says what was expected and what came. */
public final class PlanException extends IllegalArgumentException {
    public PlanException(String message) {
        super(message);
    }
}
