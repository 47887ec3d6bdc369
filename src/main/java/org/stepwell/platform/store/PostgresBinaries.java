package org.stepwell.platform.store;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;
import org.stepwell.platform.StartProblem;

/** The PostgreSQL programs that the jar carries, unpacked once per content into the home. */
final class PostgresBinaries {
    private PostgresBinaries() {
    }

    /**
     * Unpacks when needed.
     *
     * @param home folder to unpack below
     * @return folder that holds {@code bin}, {@code lib} and {@code share}
     */
    static Path unpackedBelow(Path home) {
        String archive = archive();
        try {
            Path folder = home.resolve("postgres-" + digest(archive));
            if (Files.exists(folder.resolve("unpacked"))) {
                return folder;
            }
            Path next = Files.createTempDirectory(home, "unpacking");
            unpack(archive, next);
            Files.createFile(next.resolve("unpacked"));
            deleteTree(folder);
            Files.move(next, folder);
            return folder;
        } catch (IOException full) {
            throw new StartProblem("PostgreSQL cannot be unpacked into " + home + ": " + full.getMessage()
                    + ". It needs about 100 MB of free space there.", full);
        }
    }

    private static String archive() {
        String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String machine = System.getProperty("os.arch").toLowerCase(Locale.ROOT);
        String system = os.startsWith("mac") ? "darwin" : os.startsWith("windows") ? "windows" : "linux";
        String bits = machine.equals("amd64") || machine.equals("x86_64") ? "x86_64" : "arm_64";
        String name = "/postgres-" + system + "-" + bits + ".txz";
        if (PostgresBinaries.class.getResource(name) == null) {
            throw new StartProblem("This jar carries no PostgreSQL for " + os + " on " + machine + ". Build it on this "
                    + "machine, or name an own PostgreSQL by STEPWELL_DB_URL.");
        }
        return name;
    }

    private static String digest(String archive) throws IOException {
        try (InputStream in = PostgresBinaries.class.getResourceAsStream(archive);
                DigestInputStream digested = new DigestInputStream(in, MessageDigest.getInstance("SHA-256"))) {
            digested.transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(digested.getMessageDigest().digest(), 0, 8);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static void unpack(String archive, Path into) throws IOException {
        try (InputStream in = PostgresBinaries.class.getResourceAsStream(archive);
                TarArchiveInputStream tar = new TarArchiveInputStream(
                        new XZCompressorInputStream(new BufferedInputStream(in)))) {
            TarArchiveEntry entry;
            while ((entry = tar.getNextEntry()) != null) {
                Path target = into.resolve(entry.getName()).normalize();
                if (!target.startsWith(into)) {
                    throw new IOException("entry outside of the archive: " + entry.getName());
                }
                if (entry.isDirectory()) {
                    Files.createDirectories(target);
                } else if (entry.isSymbolicLink()) {
                    Files.createDirectories(target.getParent());
                    Files.createSymbolicLink(target, Path.of(entry.getLinkName()));
                } else {
                    Files.createDirectories(target.getParent());
                    Files.copy(tar, target);
                    if ((entry.getMode() & 0100) != 0 || target.getParent().endsWith("bin")) {
                        executable(target);
                    }
                }
            }
        }
    }

    private static void executable(Path file) throws IOException {
        if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Set<PosixFilePermission> rights = EnumSet.copyOf(Files.getPosixFilePermissions(file));
            rights.add(PosixFilePermission.OWNER_EXECUTE);
            rights.add(PosixFilePermission.GROUP_EXECUTE);
            rights.add(PosixFilePermission.OTHERS_EXECUTE);
            Files.setPosixFilePermissions(file, rights);
        }
    }

    static void deleteTree(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
