package leadwright.planner.wire;

import java.util.Arrays;
import java.util.List;

/**
 * Phase 7g: how requirements cut connections into cells, in machine words.
 *
 * <p>Needs: requirements. Gives: for cells that some of them make the number that a further one leads to, and a number that
 * is the same for all that lead to the same cells. Method: the sets as bits, 64 to a word. Cost: cells × words a question.
 * Where nothing may float joined there are more cells than counted here, never fewer.
 */
final class Cuts {
    private final int words;
    private final int most;
    private final long[][] roles;
    private long signature;

    /** @param most cells that a hookup has at most */
    Cuts(int connections, int most, List<Requirement> requirements) {
        this.words = Math.max(1, (connections + 63) / 64);
        this.most = most;
        this.roles = new long[requirements.size()][3 * words];
        for (int r = 0; r < roles.length; r++) {
            Requirement each = requirements.get(r);
            for (int e = each.all().nextSetBit(0); e >= 0; e = each.all().nextSetBit(e + 1)) {
                roles[r][(each.role()[e] - 1) * words + (e >> 6)] |= 1L << (e & 63);
            }
        }
    }

    /** Room for cells: one set after the other, and last what is in none; to begin with there are no cells. */
    long[] room() {
        long[] room = new long[(most + 1) * words];
        Arrays.fill(room, most * words, room.length, -1L);
        return room;
    }

    /** Equal for two questions about the same cells where both lead to the same cells. */
    long signature() {
        return signature;
    }

    /**
     * Cells with one requirement more.
     *
     * @param cells what {@link #room} or {@link #into} gave
     * @param count how many cells these are
     * @return how many there are then; one more than the most where they are too many
     */
    int with(long[] cells, int count, int requirement) {
        long[] sets = roles[requirement];
        int next = 0;
        signature = 0;
        for (int cell = 0; cell <= count; cell++) {
            int from = (cell < count ? cell : most) * words;
            int parts = parts(cells, from, sets);
            // What is in none of the sets and was in no cell makes none.
            int pieces = Integer.bitCount(cell < count ? parts : parts & ~1);
            next += pieces;
            if (next > most) {
                return most + 1;
            }
            if (pieces > 1 || cell == count && pieces > 0) {
                sign(cells, from, sets, cell < count ? 0 : 1);
            }
        }
        return next;
    }

    /** Which parts of a cell are not empty: bit 0 for what is in none of the sets, bits 1 to 3 for the sets. */
    private int parts(long[] cells, int from, long[] sets) {
        long none = 0;
        long measured = 0;
        long against = 0;
        long earthed = 0;
        for (int w = 0; w < words; w++) {
            long bits = cells[from + w];
            measured |= bits & sets[w];
            against |= bits & sets[words + w];
            earthed |= bits & sets[2 * words + w];
            none |= bits & ~(sets[w] | sets[words + w] | sets[2 * words + w]);
        }
        return (none != 0 ? 1 : 0) | (measured != 0 ? 2 : 0) | (against != 0 ? 4 : 0) | (earthed != 0 ? 8 : 0);
    }

    private void sign(long[] cells, int from, long[] sets, int first) {
        for (int role = first; role <= 3; role++) {
            long mixed = 0;
            for (int w = 0; w < words; w++) {
                mixed = mixed * 0x9E3779B97F4A7C15L + part(cells[from + w], sets, role, w);
            }
            mixed *= 0xBF58476D1CE4E5B9L;
            signature += mixed ^ (mixed >>> 29);
        }
    }

    private long part(long bits, long[] sets, int role, int w) {
        return role == 0
                ? bits & ~(sets[w] | sets[words + w] | sets[2 * words + w])
                : bits & sets[(role - 1) * words + w];
    }

    /** Puts the cells with one requirement more, which are not too many, into the room given; returns how many there are. */
    int into(long[] cells, int count, int requirement, long[] room) {
        long[] sets = roles[requirement];
        int next = 0;
        for (int cell = 0; cell <= count; cell++) {
            int from = (cell < count ? cell : most) * words;
            for (int role = cell < count ? 0 : 1; role <= 3; role++) {
                long any = 0;
                for (int w = 0; w < words && next < most; w++) {
                    room[next * words + w] = part(cells[from + w], sets, role, w);
                    any |= room[next * words + w];
                }
                next += any != 0 ? 1 : 0;
            }
        }
        for (int w = 0; w < words; w++) {
            room[most * words + w] = part(cells[most * words + w], sets, 0, w);
        }
        return next;
    }
}
