package leadwright.render.diagram;

import java.nio.file.*;
import org.junit.jupiter.api.Test;

class LookTest {
    @Test
    void write() throws Exception {
        Path dir = Path.of("/tmp/dg/out");
        Files.createDirectories(dir);
        for (var each : Sketches.all().entrySet()) {
            try {
                for (Drawing d : Diagrams.draw(each.getValue())) {
                    Files.writeString(
                            dir.resolve(each.getKey() + "-" + d.hookup() + "-" + d.sheet() + ".svg"), d.svg());
                }
            } catch (RuntimeException e) {
                e.printStackTrace();
            }
        }
    }
}
