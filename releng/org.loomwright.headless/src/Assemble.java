// SPDX-License-Identifier: EPL-2.0

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.Enumeration;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;

/**
 * Makes the folder that the command line runs from.
 *
 * <p>{@code lib/} gets each jar of the class path without its signature, since the start-up cache of the JVM leaves out
 * the classes of signed jars, with class files of a form from before Java 6 brought to that of Java 8, since it leaves
 * out those too, and with the few lines of its manifest that a class path needs, since each start reads all manifests
 * (the one of a signed jar names every file). {@code classpath} holds the jars in order, as {@code lib/a.jar:lib/b.jar}; {@code hash} a
 * hash of all their bytes, after which the start-up cache is named; {@code stamp} carries the time at which the build
 * began: whatever was changed later is not in it. A jar whose bytes did not change is left as it was.
 */
public final class Assemble {

    private static final String CLASS = ".class";
    private static final Pattern SIGNATURE = Pattern.compile("META-INF/[^/]+\\.(SF|RSA|DSA|EC)");
    private static final List<String> KEPT = List.of("Manifest-Version", "Multi-Release", "Bundle-Version",
            "Implementation-Version");
    private static final Pattern VERSION = Pattern.compile("-[0-9].*\\.jar$");

    private Assemble() {
    }

    /** Arguments: the file with the class path as Maven has it, the folder to make, the time the build began. */
    public static void main(String[] arguments) throws Exception {
        List<Path> jars = Stream.of(Files.readString(Path.of(arguments[0])).trim().split(":")).map(Path::of).toList();
        Path folder = Path.of(arguments[1]);
        Path stamp = folder.resolve("stamp");
        Files.deleteIfExists(stamp);
        Path lib = Files.createDirectories(folder.resolve("lib"));
        MessageDigest all = MessageDigest.getInstance("SHA-256");
        Map<String, Path> named = new LinkedHashMap<>();
        Modern modern = new Modern(jars);
        for (Path jar : jars) {
            String name = name(jar);
            if (named.putIfAbsent(name, jar) != null) {
                throw new IOException(name + " stands twice on the class path: " + jar + " and " + named.get(name));
            }
            Path stripped = lib.resolve(name);
            Path fresh = lib.resolve(name + ".new");
            strip(jar, fresh, modern);
            if (Files.exists(stripped) && Files.mismatch(fresh, stripped) == -1) {
                Files.delete(fresh);
            } else {
                Files.move(fresh, stripped, StandardCopyOption.REPLACE_EXISTING);
            }
            all.update(name.getBytes(StandardCharsets.UTF_8));
            all.update(Files.readAllBytes(stripped));
        }
        for (Path old : list(lib)) {
            if (!named.containsKey(old.getFileName().toString())) {
                Files.delete(old);
            }
        }
        Files.writeString(folder.resolve("classpath"), "lib/" + String.join(":lib/", named.keySet()) + "\n");
        Files.writeString(folder.resolve("hash"), HexFormat.of().formatHex(all.digest(), 0, 10) + "\n");
        Files.createFile(stamp);
        Files.setLastModifiedTime(stamp, FileTime.from(Instant.parse(arguments[2])));
    }

    /** Our own jars go without a version: the path of a running installation then stays the same. */
    private static String name(Path jar) {
        String name = jar.getFileName().toString();
        return name.startsWith("org.loomwright.") ? VERSION.matcher(name).replaceFirst(".jar") : name;
    }

    private static List<Path> list(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    private static void strip(Path signed, Path to, Modern modern) throws IOException {
        boolean ours = signed.getFileName().toString().startsWith("org.loomwright.");
        try (ZipFile from = new ZipFile(signed.toFile());
                OutputStream file = Files.newOutputStream(to);
                ZipOutputStream out = new ZipOutputStream(file)) {
            Plain plain = new Plain();
            long time = 0;
            Map<ZipEntry, byte[]> kept = new LinkedHashMap<>();
            for (Enumeration<? extends ZipEntry> entries = from.entries(); entries.hasMoreElements();) {
                ZipEntry entry = entries.nextElement();
                if (SIGNATURE.matcher(entry.getName()).matches() || entry.isDirectory()) {
                    continue;
                }
                try (InputStream in = from.getInputStream(entry)) {
                    kept.put(entry, entry.getName().equals(JarFile.MANIFEST_NAME) ? brief(in)
                            : !entry.getName().endsWith(CLASS) ? in.readAllBytes()
                            : ours ? plain.form(in.readAllBytes()) : modern.form(in.readAllBytes()));
                }
            }
            for (Map.Entry<ZipEntry, byte[]> each : kept.entrySet()) {
                write(out, each.getKey().getName(), each.getKey().getTime(), plain.host(each.getKey().getName(),
                        each.getValue()));
                time = each.getKey().getTime();
            }
            for (Map.Entry<String, byte[]> each : plain.made().entrySet()) {
                write(out, each.getKey() + CLASS, time, each.getValue());
            }
        }
    }

    private static void write(ZipOutputStream out, String name, long time, byte[] content) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTime(time);
        out.putNextEntry(entry);
        out.write(content);
        out.closeEntry();
    }

    /** What a manifest says of the form of the jar and of its version. */
    private static byte[] brief(InputStream manifest) throws IOException {
        Attributes all = new Manifest(manifest).getMainAttributes();
        Manifest brief = new Manifest();
        for (String name : KEPT) {
            if (all.getValue(name) != null) {
                brief.getMainAttributes().putValue(name, all.getValue(name));
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        brief.write(out);
        return out.toByteArray();
    }

    /** Brings old class files to the form of Java 8: the same code, with the frames that a verifier of today reads. */
    private static final class Modern {

        private static final int JAVA_6 = 50;
        private static final int MAJOR = 6;

        private final ClassLoader libraries;

        Modern(List<Path> jars) throws IOException {
            URL[] places = new URL[jars.size()];
            for (int i = 0; i < places.length; i++) {
                places[i] = jars.get(i).toUri().toURL();
            }
            libraries = new URLClassLoader(places);
        }

        /** The class file itself where it is new enough, or where its frames cannot be found. */
        byte[] form(byte[] file) {
            if (((file[MAJOR] & 0xff) << 8 | file[MAJOR + 1] & 0xff) >= JAVA_6) {
                return file;
            }
            ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_FRAMES) {
                @Override
                protected ClassLoader getClassLoader() {
                    return libraries;
                }
            };
            try {
                new ClassReader(file).accept(new ClassVisitor(Opcodes.ASM9, writer) {
                    @Override
                    public void visit(int version, int access, String name, String generic, String parent, String[] roles) {
                        super.visit(Opcodes.V1_8, access, name, generic, parent, roles);
                    }
                }, ClassReader.SKIP_FRAMES);
            } catch (RuntimeException e) { // a subroutine of old, or a class that only an optional library has
                return file;
            }
            return writer.toByteArray();
        }
    }
}
