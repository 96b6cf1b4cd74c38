package leadwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The one allowed direction, no cycles, and each library behind the packages named here. */
class ArchitectureTest {
    private static JavaClasses house;

    @BeforeAll
    static void load() {
        house = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("leadwright");
    }

    @Test
    void catalogKnowsNeitherPlannerNorRender() {
        noClasses()
                .that()
                .resideInAPackage("leadwright.catalog..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("leadwright.planner..", "leadwright.render..")
                .check(house);
    }

    @Test
    void plannerDoesNotKnowRender() {
        noClasses()
                .that()
                .resideInAPackage("leadwright.planner..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("leadwright.render..")
                .check(house);
    }

    @Test
    void auditSharesNothingWithTheSearch() {
        noClasses()
                .that()
                .resideInAPackage("leadwright.planner.audit..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "leadwright.planner.oblige..", "leadwright.planner.wire..", "leadwright.planner.order..")
                .check(house);
        noClasses()
                .that()
                .resideInAnyPackage(
                        "leadwright.planner.oblige..", "leadwright.planner.wire..", "leadwright.planner.order..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("leadwright.planner.audit..")
                .check(house);
    }

    /** What was read is judged, and plans are compared, by what a plan's file says, and not by planning again. */
    @Test
    void judgingAndComparingPlanNothing() {
        noClasses()
                .that()
                .resideInAnyPackage("leadwright.planner.judge..", "leadwright.planner.compare..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "leadwright.planner.oblige..",
                        "leadwright.planner.wire..",
                        "leadwright.planner.order..",
                        "leadwright.planner.audit..")
                .check(house);
    }

    /** What an edition says is made apart from how it looks: the words know no file format, the formats know no plan's words. */
    @Test
    void editionsAreWordsWithoutALook() {
        noClasses()
                .that()
                .resideInAPackage("leadwright.render.paper..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("leadwright.catalog..", "leadwright.planner..")
                .check(house);
        noClasses()
                .that()
                .resideInAPackage("leadwright.render.paper..")
                .should()
                .dependOnClassesThat(DescribedPredicate.describe(
                        "another package of render",
                        (JavaClass each) -> each.getPackageName().startsWith("leadwright.render")
                                && !each.getPackageName().equals("leadwright.render.paper")))
                .check(house);
        noClasses()
                .that()
                .resideInAPackage("leadwright.render.edition..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("leadwright.render.export..", "leadwright.render.cli..")
                .check(house);
        noClasses()
                .that()
                .resideInAnyPackage("leadwright.render.export..", "leadwright.render.sheet..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("leadwright.render.edition..")
                .check(house);
    }

    @Test
    void packagesFormNoCycles() {
        slices().matching("leadwright.catalog.(*)..").should().beFreeOfCycles().check(house);
        slices().matching("leadwright.render.(*)..").should().beFreeOfCycles().check(house);
        slices().matching(
                        "leadwright.planner.(oblige|wire|order|plan|file|judge|compare|circuit|foresee|mistake|rehearse)..")
                .should()
                .beFreeOfCycles()
                .check(house);
    }

    @Test
    void eachLibraryStaysBehindItsPackages() {
        only("org.snakeyaml..", "leadwright.catalog.text..");
        only(
                "org.jgrapht..",
                "leadwright.planner.wire..",
                "leadwright.planner.audit..",
                "leadwright.planner.compare..",
                "leadwright.planner.circuit..");
        only(
                "org.ejml..",
                "leadwright.planner.circuit..",
                "leadwright.planner.foresee..",
                "leadwright.planner.mistake..");
        only("picocli..", "leadwright.render.cli..");
        only("com.fasterxml.jackson..", "leadwright.render.export..", "leadwright.render.cli..");
        only("org.apache.batik..", "leadwright.render.export..");
        only("org.apache.pdfbox..", "leadwright.render.export..");
        only("com.openhtmltopdf..", "leadwright.render.export..");
        only("org.apache.poi..", "leadwright.render.export..");
        only("org.apache.xmlbeans..", "leadwright.render.export..");
        only("org.openxmlformats..", "leadwright.render.export..");
    }

    private static void only(String library, String... packages) {
        classes()
                .that()
                .resideInAPackage("leadwright..")
                .and()
                .resideOutsideOfPackages(packages)
                .should()
                .onlyDependOnClassesThat()
                .resideOutsideOfPackage(library)
                .check(house);
    }
}
