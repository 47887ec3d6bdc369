import java.time.LocalDateTime;
import java.util.List;
import java.util.SplittableRandom;

/** Slips of the finger and how they were put right: nothing is overwritten. */
final class SampleCorrections {
    private SampleCorrections() {}

    static List<SampleLook> looks(SplittableRandom random) {
        SampleLook wrongChild = look("2026-04-29T09:45:12", "q0618", 3, "sticks_10_20_30", "", "", random);
        SampleLook rightChild = look(
                "2026-04-29T09:45:13", "q0619", 3, "sticks_10_20_30",
                "Tapped at the other card first; moved here after groups.", wrongChild.id().toString(), random);
        SampleLook wrongStep = look("2026-05-05T09:57:20", "q0604", 1, "cubes_by_ones", "", "", random);
        SampleLook rightStep = look(
                "2026-05-05T09:57:21", "q0604", 3, "sticks_10_20_30", "", wrongStep.id().toString(), random);
        SampleLook slip = look("2026-05-06T09:47:30", "q0606", 1, "cubes_by_ones", "", "", random);
        SampleLook gone = withdrawn(slip, random);
        return List.of(wrongChild, rightChild, wrongStep, rightStep, slip, gone);
    }

    private static SampleLook look(
            String time, String child, int step, String phrase, String note, String replaces, SplittableRandom random) {
        LocalDateTime at = LocalDateTime.parse(time);
        return new SampleLook(
                SampleLook.id(at, random), at, child, "T07", "30", step, "none", "table", SampleLook.TEACHER,
                phrase, note, replaces, false);
    }

    private static SampleLook withdrawn(SampleLook slip, SplittableRandom random) {
        LocalDateTime at = slip.at().plusSeconds(9);
        return new SampleLook(
                SampleLook.id(at, random), at, slip.child(), "", "", 0, "none", "table", SampleLook.TEACHER,
                "", "Tapped by mistake.", slip.id().toString(), true);
    }
}
