package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.Step;

/** What the hand does between one hookup and the next, by the numbers of the plan's steps. */
final class Changes {
    private final Plan plan;
    private final Map<String, Optional<Hookup>> before = new LinkedHashMap<>();
    private final Map<String, Set<Joint>> joints = new HashMap<>();
    private final Map<String, Map<Joint, Integer>> joined = new HashMap<>();
    private final Map<String, Map<Joint, Integer>> takenOff = new HashMap<>();

    Changes(Plan plan) {
        this.plan = plan;
        Optional<Hookup> last = Optional.empty();
        for (String id : visits(plan)) {
            if (!before.containsKey(id)) {
                before.put(id, last);
            }
            last = plan.hookup(id);
        }
        for (Hookup hookup : plan.hookups()) {
            if (!before.containsKey(hookup.id())) {
                before.put(hookup.id(), last);
                last = Optional.of(hookup);
            }
            joints.put(hookup.id(), jointsOf(hookup));
            joined.put(hookup.id(), new LinkedHashMap<>());
        }
        for (Step step : plan.steps()) {
            if (step.does() == Step.Act.JOIN
                    && step.joint().isPresent()
                    && step.hookup().isPresent()) {
                joined.getOrDefault(step.hookup().get(), new HashMap<>())
                        .putIfAbsent(plain(step.joint().get()), step.number());
            }
        }
    }

    /**
     * State of a joint.
     *
     * @param step number of the step that makes it; 0 where no step does
     */
    record Status(boolean isNew, int step) {}

    private static List<String> visits(Plan plan) {
        List<String> visits = new ArrayList<>();
        for (Step step : plan.steps()) {
            step.hookup()
                    .filter(id ->
                            visits.isEmpty() || !visits.get(visits.size() - 1).equals(id))
                    .ifPresent(visits::add);
        }
        return visits;
    }

    /** Whether nothing stood before this hookup. */
    boolean first(String hookup) {
        return before.get(hookup).isEmpty();
    }

    Optional<String> before(String hookup) {
        return before.get(hookup).map(Hookup::id);
    }

    Status joint(String hookup, String from, String to) {
        Joint joint = new Joint(from, to);
        int step = joined.get(hookup).getOrDefault(joint, 0);
        boolean stood = before.get(hookup)
                .map(each -> joints.get(each.id()).contains(joint))
                .orElse(false);
        return new Status(!stood || step > 0, step);
    }

    /** Whether a connection was on its first item in the hookup before, and the step that takes it off; 0 where none does. */
    Optional<Integer> takenOff(String hookup, String connection) {
        return offs(hookup).entrySet().stream()
                .filter(off -> off.getKey().from().equals(connection))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** Numbers of the steps that take off, ascending. */
    List<Integer> off(String hookup) {
        return offs(hookup).values().stream().filter(step -> step > 0).sorted().toList();
    }

    /** Number of joints that come off. */
    int offCount(String hookup) {
        return offs(hookup).size();
    }

    /** Numbers of the steps that put on, ascending. */
    List<Integer> on(String hookup) {
        return joined.get(hookup).values().stream().sorted().toList();
    }

    /** Number of joints that stay. */
    int staying(String hookup) {
        return (int) joints.get(hookup).stream()
                .filter(joint -> !joint(hookup, joint.from(), joint.to()).isNew())
                .count();
    }

    /** A later visit to a hookup that stood before: its first step, and those that take off and put on to come back to it. */
    record Visit(int begin, List<Integer> off, List<Integer> on) {}

    /** Later visits to a hookup that stood before. */
    List<Visit> again(String hookup) {
        List<Visit> again = new ArrayList<>();
        String last = "";
        boolean seen = false;
        for (Step step : plan.steps()) {
            if (step.hookup().isEmpty()) {
                continue;
            }
            if (step.hookup().get().equals(hookup)) {
                if (seen && !last.equals(hookup)) {
                    again.add(new Visit(step.number(), new ArrayList<>(), new ArrayList<>()));
                }
                seen = true;
                if (!again.isEmpty()) {
                    Visit visit = again.get(again.size() - 1);
                    switch (step.does()) {
                        case PART -> visit.off().add(step.number());
                        case JOIN -> visit.on().add(step.number());
                        default -> {}
                    }
                }
            }
            last = step.hookup().get();
        }
        return again;
    }

    /** The step that takes the earth lead off its socket while this hookup stands. */
    Optional<Integer> earthOff(String hookup) {
        List<String> sockets = plan.hookup(hookup)
                .map(each -> each.earth().stream().map(EarthPath::socket).toList())
                .orElse(List.of());
        return plan.steps().stream()
                .filter(step -> step.does() == Step.Act.PART && step.hookup().equals(Optional.of(hookup)))
                .filter(step -> step.joint()
                        .filter(joint -> sockets.contains(joint.to()))
                        .isPresent())
                .map(Step::number)
                .findFirst();
    }

    /** Whether the earth lead that the drawing shows is off its socket when the hookup is read for the last time. */
    boolean againWithoutEarth(Hookup hookup) {
        int last = plan.steps().stream()
                .filter(step -> step.does() == Step.Act.READ && step.hookup().equals(Optional.of(hookup.id())))
                .mapToInt(Step::number)
                .max()
                .orElse(0);
        return hookup.earth().stream()
                .map(EarthPath::socket)
                .anyMatch(socket -> plan.steps().stream()
                        .filter(step -> step.number() < last)
                        .filter(step -> step.joint()
                                .filter(joint -> joint.to().equals(socket))
                                .isPresent())
                        .reduce((earlier, later) -> later)
                        .filter(step -> step.does() == Step.Act.PART)
                        .isPresent());
    }

    /** The first step that fits and plugs the supply cord while this hookup stands. */
    Optional<Integer> pluggedIn(String hookup) {
        return at(hookup, Step.Act.LOOK, Step.CORD_IN).stream().findFirst();
    }

    /** Steps that take the supply cord out while this hookup stands. */
    List<Integer> unplugged(String hookup) {
        return at(hookup, Step.Act.LOOK, Step.CORD_OUT);
    }

    /** Steps of one kind at one place in a hookup, ascending. */
    List<Integer> at(String hookup, Step.Act act, String place) {
        return plan.steps().stream()
                .filter(step -> step.does() == act
                        && step.hookup().equals(Optional.of(hookup))
                        && step.place().equals(Optional.of(place)))
                .map(Step::number)
                .toList();
    }

    private Map<Joint, Integer> offs(String hookup) {
        return takenOff.computeIfAbsent(hookup, this::findOffs);
    }

    private Map<Joint, Integer> findOffs(String hookup) {
        Map<Joint, Integer> offs = new LinkedHashMap<>();
        if (before.get(hookup).isEmpty()) {
            return offs;
        }
        Set<Joint> standing = joints.get(before.get(hookup).get().id());
        List<Step> change = change(hookup);
        int begin = change.isEmpty() ? Integer.MAX_VALUE : change.get(0).number();
        for (Joint joint : standing) {
            if (!joints.get(hookup).contains(joint) && !isOff(joint, begin)) {
                offs.put(
                        joint,
                        change.stream()
                                .filter(step -> isOf(step, joint) && step.does() == Step.Act.PART)
                                .map(Step::number)
                                .findFirst()
                                .orElse(0));
            }
        }
        return offs;
    }

    /** Steps of the first visit to a hookup: what the hand did in hookups before it, or does in later ones, is not among them. */
    private List<Step> change(String hookup) {
        return plan.steps().stream()
                .filter(step -> step.hookup().isPresent())
                .dropWhile(step -> !step.hookup().equals(Optional.of(hookup)))
                .takeWhile(step -> step.hookup().equals(Optional.of(hookup)))
                .toList();
    }

    /** Whether a joint of the hookup before is off already when the change begins, as the earth lead may be. */
    private boolean isOff(Joint joint, int begin) {
        return plan.steps().stream()
                .filter(step -> step.number() < begin && isOf(step, joint))
                .filter(step -> step.does() == Step.Act.PART || step.does() == Step.Act.JOIN)
                .reduce((earlier, later) -> later)
                .filter(step -> step.does() == Step.Act.PART)
                .isPresent();
    }

    private static boolean isOf(Step step, Joint joint) {
        return step.joint().map(Changes::plain).equals(Optional.of(joint));
    }

    /** Every joint made by hand: chains, links and the earth lead; the clip to the device moves and is none. */
    private static Set<Joint> jointsOf(Hookup hookup) {
        Set<Joint> all = new LinkedHashSet<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            for (String item : chain.items()) {
                if (!from.equals(Device.TOUCH_PROBE)) {
                    all.add(new Joint(from, item));
                }
                from = item;
            }
            all.add(new Joint(from, "jack-" + chain.jack()));
        }
        Net.links(hookup).forEach((link, jack) -> all.add(new Joint(link, "jack-" + jack)));
        addEarth(hookup, all);
        return all;
    }

    private static void addEarth(Hookup hookup, Set<Joint> joints) {
        for (EarthPath path : hookup.earth()) {
            String to = path.socket();
            for (String item : path.items()) {
                joints.add(new Joint(item, to));
                to = item;
            }
        }
    }

    private static Joint plain(Joint joint) {
        return new Joint(plain(joint.from()), plain(joint.to()));
    }

    /** An end without the branch or socket it uses. */
    static String plain(String end) {
        int mark = end.indexOf('#');
        return mark < 0 ? end : end.substring(0, mark);
    }

    /** Ascending numbers in few words: {@code 3–7, 9, 12–14}. */
    static String ranges(List<Integer> numbers) {
        StringBuilder text = new StringBuilder();
        int i = 0;
        while (i < numbers.size()) {
            int j = i;
            while (j + 1 < numbers.size() && numbers.get(j + 1) <= numbers.get(j) + 1) {
                j++;
            }
            text.append(text.isEmpty() ? "" : ", ").append(numbers.get(i));
            if (!numbers.get(i).equals(numbers.get(j))) {
                text.append(numbers.get(j) == numbers.get(i) + 1 ? ", " : "\u2013")
                        .append(numbers.get(j));
            }
            i = j + 1;
        }
        return text.toString();
    }
}
