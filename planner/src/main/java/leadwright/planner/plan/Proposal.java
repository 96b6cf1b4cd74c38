package leadwright.planner.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;

/**
 * Pieces that a kit would need, of kinds that it has or of new ones.
 *
 * @param pieces one entry a kind; never empty
 * @param text the same for a person
 */
public record Proposal(List<Piece> pieces, String text) {

    /**
     * So many of a kind.
     *
     * @param item of the kit, whatever its stock; or a new kind, with an id that no file can hold
     * @param one what one piece is, for a person
     */
    public record Piece(KitItem item, int count, String one) {
        public boolean isNewTo(Kit kit) {
            return kit.item(item.id()).isEmpty();
        }
    }

    public Proposal {
        pieces = List.copyOf(pieces);
    }

    /** Pieces in all. */
    public int count() {
        return pieces.stream().mapToInt(Piece::count).sum();
    }

    /** The kit with these pieces. */
    public Kit addedTo(Kit kit) {
        List<KitItem> items = new ArrayList<>(kit.items());
        for (Piece piece : pieces) {
            Optional<KitItem> own = kit.item(piece.item().id());
            if (own.isPresent()) {
                items.set(
                        kit.items().indexOf(own.get()),
                        own.get().withStock(own.get().stock() + piece.count()));
            } else {
                items.add(piece.item().withStock(piece.count()));
            }
        }
        return new Kit(kit.name(), kit.tester(), items, kit.checks(), kit.connectors());
    }
}
