package leadwright.planner.reach;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Proposal;

/**
 * What one piece more would change, over some devices.
 *
 * <p>Needs: a kit, devices planned with it. Gives: pieces that change anything, the most useful first. Method: all pieces at once,
 * then halves of them where these help: what does not help together does not help alone, for more never hurts. Cost: one plan a
 * device that nothing helps; twice the logarithm of the kinds for each piece that does. Proof: of readings and hookups by the
 * plan's own proofs; seconds where both plans are proven least.
 */
public final class OneMore {
    private static final Pattern PRICE = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*\\S+");

    private final Kit kit;
    private final BiFunction<DeviceReach, Kit, DeviceReach> planner;
    private final Map<Proposal.Piece, Change> changes = new LinkedHashMap<>();

    /**
     * @param piece one of it
     * @param files devices that it helps
     * @param readings more that can be read
     * @param hookups fewer, where no reading is won
     * @param seconds saved, where neither a reading nor a hookup is won
     */
    public record Change(Proposal.Piece piece, List<String> files, int readings, int hookups, int seconds) {
        public Change {
            files = List.copyOf(files);
        }
    }

    private OneMore(Kit kit, BiFunction<DeviceReach, Kit, DeviceReach> planner) {
        this.kit = kit;
        this.planner = planner;
    }

    /** @param planner plans a device with another kit */
    public static List<Change> of(
            Kit kit, List<DeviceReach> devices, BiFunction<DeviceReach, Kit, DeviceReach> planner) {
        OneMore search = new OneMore(kit, planner);
        List<Proposal.Piece> pieces = pieces(kit, devices);
        for (DeviceReach device : devices) {
            if (device.plan().isPresent()) {
                search.look(device, pieces);
            }
        }
        return search.changes.values().stream()
                .sorted(Comparator.comparingInt((Change each) -> -each.readings())
                        .thenComparingInt(each -> -each.hookups())
                        .thenComparingInt(each -> -each.seconds())
                        .thenComparing(each -> price(each.piece().item()))
                        .thenComparing(each -> each.piece().item().id(), NaturalOrder.IDS))
                .toList();
    }

    /** One of each kind of the kit, then of each new kind that was proposed. */
    private static List<Proposal.Piece> pieces(Kit kit, List<DeviceReach> devices) {
        List<Proposal.Piece> pieces = new ArrayList<>();
        kit.items().stream()
                .sorted(Comparator.comparing(KitItem::id, NaturalOrder.IDS))
                .forEach(item -> pieces.add(new Proposal.Piece(item, 1, "1 more " + item.id())));
        Map<String, Proposal.Piece> fresh = new LinkedHashMap<>();
        devices.stream()
                .flatMap(each -> each.plan().stream())
                .flatMap(plan -> plan.shortfalls().stream())
                .flatMap(shortfall -> shortfall.proposals().stream())
                .flatMap(proposal -> proposal.pieces().stream())
                .filter(piece -> piece.isNewTo(kit))
                .forEach(piece -> fresh.putIfAbsent(piece.one(), piece));
        int number = 0;
        for (Proposal.Piece piece : fresh.values()) {
            // Two new kinds of one id may differ in length.
            KitItem item = named(piece.item(), piece.item().id() + " " + ++number);
            pieces.add(new Proposal.Piece(item, 1, piece.one()));
        }
        return pieces;
    }

    private void look(DeviceReach base, List<Proposal.Piece> group) {
        DeviceReach with = planner.apply(base, new Proposal(group, "").addedTo(kit));
        if (!with.betterThan(base)) {
            return;
        }
        if (group.size() == 1) {
            add(group.get(0), base, with);
            return;
        }
        look(base, group.subList(0, group.size() / 2));
        look(base, group.subList(group.size() / 2, group.size()));
    }

    private void add(Proposal.Piece piece, DeviceReach base, DeviceReach with) {
        int readings = with.possible() - base.possible();
        int hookups = readings == 0 ? base.hookups() - with.hookups() : 0;
        int seconds = readings == 0 && hookups == 0 ? base.seconds() - with.seconds() : 0;
        Change change = new Change(piece, List.of(base.file()), readings, hookups, seconds);
        changes.merge(piece, change, (one, other) -> {
            List<String> files = new ArrayList<>(one.files());
            files.addAll(other.files());
            return new Change(
                    piece,
                    files,
                    one.readings() + other.readings(),
                    one.hookups() + other.hookups(),
                    one.seconds() + other.seconds());
        });
    }

    private static KitItem named(KitItem item, String id) {
        return new KitItem(
                id,
                item.kind(),
                item.ends(),
                item.branches(),
                item.also(),
                item.length(),
                item.conductor(),
                item.current(),
                item.voltage(),
                item.capacitance(),
                item.stock(),
                item.price());
    }

    /** What states no price comes after what does. */
    private static BigDecimal price(KitItem item) {
        return item.price()
                .map(PRICE::matcher)
                .filter(Matcher::matches)
                .map(found -> new BigDecimal(found.group(1)))
                .orElse(BigDecimal.valueOf(Long.MAX_VALUE));
    }
}
