package leadwright.planner.audit;

import java.util.function.UnaryOperator;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans.Sample;

/** One deliberate damage to a good plan, and the invariant that the audit must name. */
record Deliberate(Invariant named, String what, Sample sample, UnaryOperator<Plan> damage) {}
