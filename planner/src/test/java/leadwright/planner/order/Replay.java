package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.SupplyConnection;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Plays the steps of an ordering one by one and holds each to what may be done in the state that the bench is in. */
final class Replay {
    private static final Set<String> BARE =
            Set.of("skin-surface", "liquid-column", "probe-shaft", "metal", "painted", "insulating");

    private final Device device;
    private final boolean underPower;
    private final Ordering ordering;
    private final boolean permanent;
    private final Map<String, Reading> readings = new HashMap<>();
    private final Map<String, Connection> connections = new HashMap<>();
    private final Set<Joint> made = new HashSet<>();
    private final List<Obligation> taken = new ArrayList<>();
    private final List<String> standing = new ArrayList<>();
    private MainsState state = MainsState.OFF;
    private boolean on;
    private boolean safe;
    private boolean nulled;
    private String clip = "";
    private String touched = "";
    private String selected = "";

    private Replay(Device device, boolean underPower, Ordering ordering) {
        this.device = device;
        this.underPower = underPower;
        this.ordering = ordering;
        this.permanent = device.supply().connection() == SupplyConnection.PERMANENT;
        ordering.readings().forEach(each -> readings.put(each.id(), each));
        device.connections().forEach(each -> connections.put(each.name(), each));
    }

    static void check(Device device, boolean underPower, Ordering ordering, List<Obligation> wanted) {
        Replay replay = new Replay(device, underPower, ordering);
        replay.figures();
        replay.ids(wanted);
        ordering.steps().forEach(replay::play);
        assertThat(replay.on).as("device left on").isFalse();
        assertThat(replay.taken).as("each reading once").containsExactlyInAnyOrderElementsOf(wanted);
        replay.precedence();
    }

    private void figures() {
        int total = 0;
        int starts = 0;
        Map<Step.Account, Integer> parts = new HashMap<>();
        for (int i = 0; i < ordering.steps().size(); i++) {
            Step step = ordering.steps().get(i);
            assertThat(step.number()).isEqualTo(i + 1);
            assertThat(step.text()).isNotBlank();
            assertThat(step.because()).isNotBlank();
            assertThat(step.seconds()).isNotNegative();
            total += step.seconds();
            starts += step.does() == Act.START ? 1 : 0;
            parts.merge(step.account(), step.seconds() - step.writing(), Integer::sum);
            parts.merge(Step.Account.WRITE, step.writing(), Integer::sum);
        }
        parts.values().removeIf(seconds -> seconds == 0);
        Map<Step.Account, Integer> said = new HashMap<>(ordering.time().parts());
        said.values().removeIf(seconds -> seconds == 0);
        assertThat(said).isEqualTo(parts);
        assertThat(ordering.time().total()).isEqualTo(total);
        assertThat(ordering.time().startUps()).isEqualTo(starts);
        assertThat(ordering.proof().answer()).isEqualTo(total);
        assertThat(ordering.proof().lowerBound()).isLessThanOrEqualTo(total);
        assertThat(ordering.time().plainOrder()).as("plain order").isGreaterThanOrEqualTo(total);
    }

    private void ids(List<Obligation> wanted) {
        int width = Math.max(2, String.valueOf(wanted.size()).length());
        int number = 0;
        for (Step step : ordering.steps()) {
            if (step.does() == Act.READ) {
                String id = String.format(java.util.Locale.ROOT, "R%0" + width + "d", ++number);
                assertThat(step.reading()).contains(id);
            }
        }
        List<String> used = ordering.steps().stream()
                .flatMap(step -> step.hookup().stream())
                .distinct()
                .toList();
        assertThat(used).isEqualTo(ordering.hookups().stream().map(Hookup::id).toList());
        for (int h = 0; h < ordering.hookups().size(); h++) {
            assertThat(ordering.hookups().get(h).id()).isEqualTo("H" + (h + 1));
            assertThat(h == 0 || ordering.hookups().get(h).earth().isEmpty()).isTrue();
        }
    }

    private void play(Step step) {
        String where = "step " + step.number() + " " + step.text();
        MainsState to = step.state();
        switch (step.does()) {
            case SWITCH -> change(to, where);
            case START -> {
                assertThat(on).as(where).isFalse();
                assertThat(to).as(where).isEqualTo(state);
                assertThat(state.powered() || device.battery() != Battery.NONE || permanent || !device.runsOnMains())
                        .as(where)
                        .isTrue();
                assertThat(state.fault()).as(where).isEqualTo(Fault.NONE);
                on = true;
                safe = false;
            }
            case SHUT_DOWN -> {
                assertThat(on).as(where).isTrue();
                assertThat(state.fault()).as(where).isEqualTo(Fault.NONE);
                on = false;
            }
            default -> {
                if (permanent) {
                    state = to;
                } else {
                    assertThat(to).as(where).isEqualTo(state);
                }
                act(step, where);
            }
        }
        if (to.fault() == Fault.SUPPLY_OPEN) {
            assertThat(step.caution().orElse("")).as(where).contains("LIVE");
            assertThat(step.does()).as(where).isIn(Act.SWITCH, Act.TIE, Act.TOUCH, Act.READ);
        }
        if (to.fault() == Fault.EARTH_OPEN) {
            assertThat(step.does()).as(where).isIn(Act.SWITCH, Act.TIE, Act.TOUCH, Act.READ);
        }
    }

    private void change(MainsState to, String where) {
        boolean samePolarity = to.polarity() == state.polarity();
        if (state.fault() != Fault.NONE) {
            assertThat(to == MainsState.OFF || samePolarity && to.fault() == Fault.NONE)
                    .as(where)
                    .isTrue();
        } else if (to.fault() != Fault.NONE) {
            boolean unpowered = state == MainsState.OFF && to.fault() == Fault.SUPPLY_OPEN;
            assertThat(samePolarity || unpowered).as(where).isTrue();
            for (Reading each : ordering.readings()) {
                Obligation what = each.obligation();
                boolean due = what.isTouch()
                        && what.state().fault() == Fault.NONE
                        && what.state().polarity() == to.polarity();
                assertThat(!due || taken.contains(what))
                        .as(where + " before " + each.id())
                        .isTrue();
            }
        }
        boolean cut = to == MainsState.OFF
                || to.fault() == Fault.SUPPLY_OPEN
                || state.polarity() != Polarity.NONE && !samePolarity;
        if (cut && on) {
            boolean orderly = device.battery() != Battery.NONE && to.fault() != Fault.SUPPLY_OPEN
                    || to.fault() == Fault.SUPPLY_OPEN
                            && device.toleratesPowerCut().orElse(false);
            assertThat(orderly).as(where).isTrue();
            on = device.battery() != Battery.NONE;
        }
        state = to;
        touched = "";
    }

    private void act(Step step, String where) {
        switch (step.does()) {
            case JOIN, PART -> joint(step, where);
            case CLIP -> {
                assertThat(state.polarity()).as(where).isEqualTo(Polarity.NONE);
                clip = step.place().orElseThrow();
            }
            case NULL -> nulled = true;
            case MAKE_SAFE -> {
                assertThat(on).as(where).isFalse();
                safe = true;
            }
            case TIE -> selected = "?";
            case TOUCH -> touched = step.place().orElseThrow();
            case READ -> read(step, readings.get(step.reading().orElseThrow()), where);
            default -> {}
        }
    }

    private void joint(Step step, String where) {
        Joint joint = plain(step.joint().orElseThrow());
        boolean therapy = chains(step).stream()
                .filter(chain -> chain.items().contains(joint.from())
                        || chain.connection().equals(joint.from()))
                .anyMatch(chain -> device.outputs().stream()
                        .anyMatch(output -> connections.containsKey(chain.connection())
                                && connections.get(chain.connection()).part().equals(output.appliedPart())));
        if (state.polarity() != Polarity.NONE) {
            assertThat(underPower).as(where).isTrue();
            assertThat(state.fault()).as(where).isEqualTo(Fault.NONE);
            assertThat(therapy).as(where).isFalse();
            Connection connection = connections.get(joint.from());
            assertThat(connection == null || !BARE.contains(connection.terminal()))
                    .as(where)
                    .isTrue();
            for (Reading each : ordering.readings()) {
                Obligation what = each.obligation();
                boolean due = what.phase() == Phase.EARTH || what.isTouch() && what.state() == state;
                assertThat(!due || taken.contains(what))
                        .as(where + " before " + each.id())
                        .isTrue();
            }
        }
        if (therapy) {
            assertThat(on).as(where).isFalse();
            assertThat(step.does() == Act.PART || safe).as(where).isTrue();
        }
        if (step.does() == Act.JOIN) {
            assertThat(made.add(joint)).as(where).isTrue();
            nulled = false;
        } else {
            assertThat(made.remove(joint)).as(where).isTrue();
        }
        selected = "";
    }

    /** Chains of the hookup that is being made, or of the one that is taken down. */
    private List<Chain> chains(Step step) {
        if (!step.hookup().get().equals(made(0))) {
            standing.add(step.hookup().get());
        }
        String id = step.does() == Act.JOIN ? made(0) : made(1);
        return ordering.hookups().stream()
                .filter(hookup -> hookup.id().equals(id))
                .flatMap(hookup -> hookup.chains().stream())
                .toList();
    }

    /** The hookup that stands, or those before it. */
    private String made(int before) {
        int index = standing.size() - 1 - before;
        return index < 0 ? "" : standing.get(index);
    }

    private static Joint plain(Joint joint) {
        return new Joint(joint.from().replaceAll("#.*", ""), joint.to().replaceAll("#.*", ""));
    }

    private void read(Step step, Reading reading, String where) {
        Obligation what = reading.obligation();
        assertThat(what.state()).as(where).isEqualTo(state);
        assertThat(reading.hookup()).as(where).isEqualTo(step.hookup());
        assertThat(step.onFail().orElse("")).as(where).isNotBlank();
        taken.add(what);
        if (what.phase() == Phase.CHECK) {
            return;
        }
        if (what.phase() == Phase.EARTH) {
            assertThat(nulled).as(where).isTrue();
            assertThat(what.place().map(clip::equals).orElse(true)).as(where).isTrue();
            return;
        }
        if (step.hookup().isPresent()) {
            Hookup hookup = ordering.hookups().stream()
                    .filter(each -> each.id().equals(step.hookup().get()))
                    .findFirst()
                    .orElseThrow();
            Set<Joint> needed = joints(hookup);
            Set<Joint> standing = new HashSet<>(made);
            earth(ordering.hookups().get(0)).stream()
                    .filter(each -> !needed.contains(each))
                    .forEach(standing::remove);
            assertThat(standing).as(where).isEqualTo(needed);
            assertThat(hookup.bundles().stream()
                            .flatMap(each -> each.connections().stream())
                            .toList())
                    .as(where)
                    .containsAll(what.demand().all());
        }
        boolean powered = what.state().powered() && !what.mode().equals("off");
        assertThat(!powered || on).as(where).isTrue();
        if (what.phase() == Phase.INSULATION || what.mode().equals("off")) {
            assertThat(on).as(where).isFalse();
        }
        if (!what.demand().isNothing()) {
            assertThat(selected).as(where).isIn("?", what.demand().key());
            selected = what.demand().key();
        }
        Units.touched(what).ifPresent(place -> assertThat(touched).as(where).isEqualTo(place));
        if (what.phase() == Phase.MAINS_ON_PART) {
            assertThat(step.caution().orElse("")).as(where).containsIgnoringCase("hands off");
        }
    }

    private Set<Joint> joints(Hookup hookup) {
        Set<Joint> joints = new HashSet<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            for (String item : chain.items()) {
                if (!from.equals(Device.TOUCH_PROBE)) {
                    joints.add(new Joint(from, item));
                }
                from = item;
            }
            joints.add(new Joint(from, "jack-" + chain.jack()));
        }
        return joints;
    }

    private static Set<Joint> earth(Hookup hookup) {
        Set<Joint> joints = new HashSet<>();
        for (EarthPath path : hookup.earth()) {
            String to = path.socket();
            for (String item : path.items()) {
                joints.add(new Joint(item, to));
                to = item;
            }
        }
        return joints;
    }

    private void precedence() {
        Map<Obligation, String> hookups = new HashMap<>();
        ordering.readings()
                .forEach(each -> hookups.put(each.obligation(), each.hookup().orElse("")));
        for (int i = 0; i < taken.size(); i++) {
            for (int j = i + 1; j < taken.size(); j++) {
                Obligation early = taken.get(i);
                Obligation late = taken.get(j);
                boolean leak = early.phase() == Phase.ORDINARY || early.phase() == Phase.MAINS_ON_PART;
                boolean wrong =
                        early.phase() != Phase.EARTH && early.phase() != Phase.CHECK && Exhaustive.precedes(late, early)
                                || late.phase() == Phase.EARTH && (leak || early.phase() == Phase.INSULATION)
                                || early.phase() == Phase.MAINS_ON_PART
                                        && late.phase() == Phase.ORDINARY
                                        && hookups.get(early).equals(hookups.get(late));
                assertThat(wrong).as("%s before %s", early.key(), late.key()).isFalse();
            }
        }
    }
}
