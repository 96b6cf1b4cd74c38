package leadwright.planner.compare;

import leadwright.catalog.device.Words;

/** Kinds of change, those that matter more first. Each is the same kind seen from either plan. */
public enum Kind {
    DEVICE(Concern.PLANNED_FOR),
    PROTECTION(Concern.PLANNED_FOR),
    APPLIED_PART(Concern.PLANNED_FOR),
    PART_TYPE(Concern.PLANNED_FOR),
    PART_CONNECTIONS(Concern.PLANNED_FOR),
    KIT(Concern.PLANNED_FOR),
    TESTER(Concern.PLANNED_FOR),
    CALIBRATION(Concern.PLANNED_FOR),
    RULES(Concern.PLANNED_FOR),
    OCCASION(Concern.PLANNED_FOR),
    DATE(Concern.PLANNED_FOR),
    DEPARTMENT(Concern.PLANNED_FOR),
    SIGNS(Concern.PLANNED_FOR),

    TRAINING_COPY(Concern.HAZARDS),
    PARTIAL(Concern.HAZARDS),
    SHORTFALL(Concern.HAZARDS),
    THERAPY_OUTPUT(Concern.HAZARDS),
    MAINS_ON_PART(Concern.HAZARDS),
    PART_SOURCE(Concern.HAZARDS),
    CAUTION(Concern.HAZARDS),
    REPLUG_UNDER_POWER(Concern.HAZARDS),
    FLOAT_JOINED(Concern.HAZARDS),
    ON_FAIL(Concern.HAZARDS),
    WARNING(Concern.HAZARDS),

    LIMIT(Concern.LIMITS),
    LIMIT_ORIGIN(Concern.LIMITS),
    DECISION(Concern.LIMITS),
    ACCURACY(Concern.LIMITS),

    READING(Concern.TESTS),
    TAKEN_OTHERWISE(Concern.TESTS),
    CLAUSE(Concern.TESTS),
    REMARK(Concern.TESTS),
    NOT_APPLICABLE(Concern.TESTS),

    HOOKUPS(Concern.WIRING),
    HOOKUP(Concern.WIRING),
    JACK(Concern.WIRING),
    CHAIN(Concern.WIRING),
    LINK(Concern.WIRING),
    EARTH_LEAD(Concern.WIRING),
    TAKEN_IN(Concern.WIRING),
    ITEMS(Concern.WIRING),

    START_UPS(Concern.ORDER),
    READING_MOVED(Concern.ORDER),
    INSTRUCTION(Concern.ORDER),
    ACTS(Concern.ORDER),

    TOTAL(Concern.TIME),
    SPLIT(Concern.TIME),
    HOOKUPS_PROOF(Concern.TIME),
    TIME_PROOF(Concern.TIME);

    private final Concern concern;

    Kind(Concern concern) {
        this.concern = concern;
    }

    public Concern concern() {
        return concern;
    }

    public String word() {
        return Words.of(this);
    }
}
