// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.FieldVisitor;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.commons.ClassRemapper;
import org.objectweb.asm.commons.Remapper;

/** Which types a compiled class names. */
record ClassFile(byte[] bytes) {

    private static final int SHOWN = Opcodes.ACC_PUBLIC | Opcodes.ACC_PROTECTED;

    static ClassFile read(Path file) throws IOException {
        return new ClassFile(Files.readAllBytes(file));
    }

    /** The name of the class, with dots. */
    String name() {
        return new ClassReader(bytes).getClassName().replace('/', '.');
    }

    /** True if code outside the package can name the class. */
    boolean isPublic() {
        return (new ClassReader(bytes).getAccess() & Opcodes.ACC_PUBLIC) != 0;
    }

    /** All types that the class names anywhere, its code included. */
    Set<String> types() {
        TypeCollector types = new TypeCollector();
        new ClassReader(bytes).accept(new ClassRemapper(new NoVisitor(), types), 0);
        return types.found;
    }

    /** The types that the class shows to others: its parents, and those of its public and protected members. */
    Set<String> shownTypes() {
        TypeCollector types = new TypeCollector();
        ClassVisitor onlyShown = new ClassVisitor(Opcodes.ASM9, new ClassRemapper(new NoVisitor(), types)) {

            @Override
            public FieldVisitor visitField(int access, String name, String type, String signature, Object value) {
                return (access & SHOWN) == 0 ? null : super.visitField(access, name, type, signature, value);
            }

            @Override
            public MethodVisitor visitMethod(int access, String name, String type, String signature, String[] thrown) {
                return (access & SHOWN) == 0 ? null : super.visitMethod(access, name, type, signature, thrown);
            }

            @Override
            public void visitInnerClass(String name, String outer, String inner, int access) {
                // names each class that the code mentions
            }

            @Override
            public void visitNestMember(String member) {
                // private classes too
            }
        };
        new ClassReader(bytes).accept(onlyShown, ClassReader.SKIP_CODE | ClassReader.SKIP_DEBUG);
        return types.found;
    }

    /** A visitor that takes everything and keeps nothing, but for which ASM walks through all there is. */
    private static final class NoVisitor extends ClassVisitor {

        NoVisitor() {
            super(Opcodes.ASM9);
        }

        @Override
        public FieldVisitor visitField(int access, String name, String type, String signature, Object value) {
            return new FieldVisitor(Opcodes.ASM9) {
            };
        }

        @Override
        public MethodVisitor visitMethod(int access, String name, String type, String signature, String[] thrown) {
            return new MethodVisitor(Opcodes.ASM9) {
            };
        }
    }

    private static final class TypeCollector extends Remapper {

        private final Set<String> found = new TreeSet<>();

        TypeCollector() {
            super(Opcodes.ASM9);
        }

        @Override
        public String map(String type) {
            found.add(type.replace('/', '.'));
            return null;
        }
    }
}
