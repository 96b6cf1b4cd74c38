package leadwright.planner.wire;

/** Answer of an exact test that may run out of its budget of cases. */
enum Verdict {
    YES,
    NO,
    /** The budget ended first: counts as no for a plan and as yes for a bound. */
    UNKNOWN
}
