package leadwright.planner.wire;

import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Obligation;

/** The fitting test of one reading on its own with a kit, device or house that is otherwise; counted, so that it can end. */
final class Trial {
    /** A test of a large recorder takes a millisecond or two. */
    private static final int MOST = 900;

    private static final int MOST_ARRANGEMENTS = 2_000;

    private final Scene scene;
    private int asked;
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
        asked++;
        Scene own = alone(device, kit, house, reading);
        Draft draft = Draft.empty(own).with(own.requirements().get(0));
        Verdict verdict = new Fit(own, none(device, kit), MOST_ARRANGEMENTS).fits(draft);
        unknownMet |= verdict == Verdict.UNKNOWN;
        return verdict;
    }

    /** Whether some test gave no answer within its budget, so that a no is not certain. */
    boolean unknownMet() {
        return unknownMet;
    }

    /** Whether so much has been tried that a search should end with what it has. */
    boolean ended() {
        return asked > MOST;
    }

    /** The kit laid out for this reading alone. */
    Tray tray(Kit kit, Obligation reading) {
        Scene own = alone(scene.device(), kit, scene.house(), reading);
        return new Fit(own, none(scene.device(), kit))
                .tray(own.requirements().get(0).duty());
    }

    private Scene alone(Device device, Kit kit, House house, Obligation reading) {
        return Scene.of(device, kit, house, scene.connectors(), java.util.List.of(reading));
    }

    private EarthLead none(Device device, Kit kit) {
        return new EarthLead(device, kit, scene.connectors(), java.util.List.of(), java.util.Optional.empty());
    }
}
