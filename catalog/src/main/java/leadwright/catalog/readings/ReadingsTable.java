package leadwright.catalog.readings;

import java.util.List;

/** The columns of the readings table that a plan is written with, so that what is written can be filled in and read back. */
public final class ReadingsTable {

    /** What the plan says of a reading, between its id and its value; it is not read back. */
    public static final List<String> OF_THE_PLAN = List.of(
            "hookup",
            "state",
            "mode",
            "quantity",
            "of",
            "measured",
            "against",
            "earthed",
            "place",
            "method",
            "component",
            "network",
            "source-polarity",
            "bound",
            "limit",
            "limit-id",
            "mark",
            "clause");

    private ReadingsTable() {}
}
