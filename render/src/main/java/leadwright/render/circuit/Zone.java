package leadwright.render.circuit;

/** Where a station of a circuit is; each has a column of its own, the same in every figure. Millimetres. */
public enum Zone {
    SUPPLY("Supply", 2, 30),
    TESTER("Tester", 35, 54),
    LEADS("Leads", 92, 33),
    DEVICE("Device", 128, 42);

    final String title;
    final double left;
    final double width;

    Zone(String title, double left, double width) {
        this.title = title;
        this.left = left;
        this.width = width;
    }

    double right() {
        return left + width;
    }
}
