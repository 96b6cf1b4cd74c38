package leadwright.render.export;

import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.XRLog;
import com.openhtmltopdf.util.XRLogger;
import java.util.logging.Level;

/**
 * Keeps the libraries from talking: what they have to say about a page comes back as diagnostics or exceptions, and a
 * line of theirs on standard error would only be noise. No window is ever opened either.
 */
final class Quiet implements XRLogger {

    static {
        System.setProperty("java.awt.headless", "true");
        // Named outright, commons-logging neither searches the class path nor starts the JDK's logging.
        System.setProperty("org.apache.commons.logging.LogFactory", "org.apache.commons.logging.impl.LogFactoryImpl");
        System.setProperty("org.apache.commons.logging.Log", "org.apache.commons.logging.impl.NoOpLog");
        XRLog.setLoggerImpl(new Quiet());
        XRLog.setLoggingEnabled(true);
    }

    private Quiet() {}

    /** Does its work once, on loading; later calls cost nothing. */
    static void install() {
        // The static block above has run by now.
    }

    @Override
    public boolean isLogLevelEnabled(Diagnostic diagnostic) {
        return false;
    }

    @Override
    public void log(String where, Level level, String message) {
        // Never asked, see above.
    }

    @Override
    public void log(String where, Level level, String message, Throwable error) {
        // Never asked, see above.
    }

    @Override
    public void setLevel(String logger, Level level) {
        // There are no levels to set.
    }
}
