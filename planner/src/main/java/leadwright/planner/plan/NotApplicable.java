package leadwright.planner.plan;

/** A test that is not done on this device, with the reason and the clause that a person can show. */
public record NotApplicable(String test, String because, String clause) {}
