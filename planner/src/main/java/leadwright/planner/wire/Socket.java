package leadwright.planner.wire;

import java.util.List;

/**
 * An open end that a chain may be plugged into, on the way to a jack.
 *
 * @param length micrometres from here to the jack; 0 where reach does not matter
 * @param fill must not stay free
 * @param depth items between here and the jack; 0 where cost does not matter
 */
record Socket(String end, List<String> also, boolean probe, long length, boolean fill, int depth) {

    static Socket jack(String socket) {
        return new Socket(socket, List.of(), false, 0, false, 0);
    }
}
