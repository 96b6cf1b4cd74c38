package leadwright.planner.wire;

import java.util.List;
import leadwright.planner.plan.Shortfall;

/** Why a requirement fits no hookup at all, and the smallest additions that would do. */
final class Shortage {
    private final Scene scene;
    private final Fit fit;
    private final EarthLead earthLead;

    Shortage(Scene scene, Fit fit, EarthLead earthLead) {
        this.scene = scene;
        this.fit = fit;
        this.earthLead = earthLead;
    }

    Shortfall of(Requirement requirement) {
        if (requirement.earth() && earthLead.choices().isEmpty()) {
            return new Shortfall("earth leads", List.of(), earthLead.refusal(), List.of());
        }
        Draft draft = Draft.empty(scene).with(requirement);
        return new Shortfall(
                "kit", List.copyOf(requirement.demand().all()), "does not fit: " + fit.fits(draft), List.of());
    }
}
