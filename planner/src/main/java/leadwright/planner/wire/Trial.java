package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Obligation;

/** The fitting test of one reading on its own with a kit, device or house that is otherwise; counted, so that it can end. */
final class Trial {
    /** A test of a large recorder takes a millisecond or two. */
    private static final int MOST = 900;

    /** Arrangements and ways of seating in all; about a second. */
    private static final long MOST_WORK = 150_000;

    private static final int MOST_ARRANGEMENTS = 2_000;

    private final Scene scene;
    private final Map<Asked, Verdict> answers = new HashMap<>();
    /** A reading asked for of fewer connections is another one under the same key. */
    private final Map<Obligation, String> shapes = new HashMap<>();

    private int asked;
    private long work;
    private boolean unknownMet;

    Trial(Scene scene) {
        this.scene = scene;
    }

    boolean fits(Kit kit, Obligation reading) {
        return fits(scene.device(), kit, scene.house(), reading);
    }

    boolean fits(Device device, Kit kit, House house, Obligation reading) {
        return verdict(device, kit, house, reading) == Verdict.YES;
    }

    Verdict verdict(Device device, Kit kit, House house, Obligation reading) {
        boolean own = device == scene.device() && house == scene.house();
        Asked question = new Asked(kit, shape(reading), own ? List.of() : List.of(device, house));
        Verdict known = answers.get(question);
        if (known != null) {
            return known;
        }
        asked++;
        Scene alone = alone(device, kit, house, reading);
        Fit fit = new Fit(alone, none(device, kit), MOST_ARRANGEMENTS);
        Verdict verdict = fit.fits(Draft.empty(alone).with(alone.requirements().get(0)));
        work += fit.work();
        unknownMet |= verdict == Verdict.UNKNOWN;
        answers.put(question, verdict);
        return verdict;
    }

    /** @param otherwise device and house where they are not the scene's own */
    private record Asked(Kit kit, String shape, List<Object> otherwise) {}

    /** What the answer depends on beside device, kit and house: readings of one shape are answered once. */
    String shape(Obligation reading) {
        return shapes.computeIfAbsent(reading, each -> shape(alone(scene.device(), scene.kit(), scene.house(), each)));
    }

    private static String shape(Scene own) {
        Requirement requirement = own.requirements().get(0);
        List<String> leaves = new ArrayList<>();
        requirement.all().stream()
                .forEach(e ->
                        leaves.add(requirement.role()[e] + " " + own.leaves().get(e)));
        leaves.sort(Comparator.naturalOrder());
        return requirement.duty() + " " + requirement.capacitance() + own.conflict()[0][0] + leaves;
    }

    /** Whether some test gave no answer within its budget, so that a no is not certain. */
    boolean unknownMet() {
        return unknownMet;
    }

    /** Whether so much has been tried that a search should end with what it has. */
    boolean ended() {
        return asked > MOST || work > MOST_WORK;
    }

    /** The kit laid out for this reading alone. */
    Tray tray(Kit kit, Obligation reading) {
        Scene own = alone(scene.device(), kit, scene.house(), reading);
        return new Fit(own, none(scene.device(), kit))
                .tray(own.requirements().get(0).duty());
    }

    private Scene alone(Device device, Kit kit, House house, Obligation reading) {
        return Scene.of(device, kit, house, scene.connectors(), List.of(reading));
    }

    private EarthLead none(Device device, Kit kit) {
        return new EarthLead(device, kit, scene.connectors(), List.of(), java.util.Optional.empty());
    }
}
