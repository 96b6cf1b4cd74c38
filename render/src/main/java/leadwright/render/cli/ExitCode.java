package leadwright.render.cli;

/** How a run ended; scripts rely on the numbers. */
final class ExitCode {

    static final int DONE = 0;
    /** The kit falls short of the rule set, or nothing may be planned; the report says why. */
    static final int FALLS_SHORT = 1;

    static final int BAD_INPUT = 2;
    /** The program's own audit refused its plan, or another fault of the program. */
    static final int FAULT = 3;

    static final int CANNOT_WRITE = 4;

    /** The list in every help text, as picocli takes it. */
    static final String HELP_0 = "0:done";

    static final String HELP_1 =
            "1:the kit falls short (a partial plan is written) or nothing may be planned (no file)";
    static final String HELP_2 = "2:bad input or wrong use: every problem with file, line and column (no file)";
    static final String HELP_3 =
            "3:the program's own audit refused the plan, or another fault of the program (no file)";
    static final String HELP_4 = "4:could not write";

    private ExitCode() {}
}
