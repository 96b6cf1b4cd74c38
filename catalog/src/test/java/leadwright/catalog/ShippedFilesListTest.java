package leadwright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.table.ShippedFiles;
import org.junit.jupiter.api.Test;

class ShippedFilesListTest {

    @Test
    void everyOutlineInTheFolderIsListedAndReads() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/leadwright/catalog/outlines"))) {
            List<String> names = files.map(file -> file.getFileName().toString().replace(".yaml", ""))
                    .sorted()
                    .toList();
            assertThat(ShippedFiles.outlines()).isEqualTo(names);
        }
        for (String name : ShippedFiles.outlines()) {
            assertThat(DeviceReader.read(name, ShippedFiles.outline(name)).problems())
                    .isEmpty();
        }
    }

    @Test
    void theDefaultKitReads() {
        assertThat(KitReader.read("default-kit.yaml", ShippedFiles.defaultKit()).problems())
                .isEmpty();
    }
}
