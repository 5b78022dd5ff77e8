// SPDX-License-Identifier: EPL-2.0

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Writes out what our own classes leave to be made while they run: lambdas become classes of their own, nest mates
 * of those they stand in, and switches over types and what records compare and hash become methods. A start-up
 * cache cannot hold what is made for the latter, and makes a lambda by way of method handles, which is slow as
 * long as code is only interpreted. What is not understood stays as it is.
 */
final class Plain {

    private static final String SWITCHES = "java/lang/runtime/SwitchBootstraps";
    private static final String RECORDS = "java/lang/runtime/ObjectMethods";
    private static final String LAMBDAS = "java/lang/invoke/LambdaMetafactory";
    private static final String CLASS = ".class";
    private static final int INTEGERS = 5;

    private final Map<String, byte[]> made = new LinkedHashMap<>();
    private final Map<String, List<String>> nests = new HashMap<>();

    /** The classes that were made, by name. */
    Map<String, byte[]> made() {
        return made;
    }

    /** The class file with the mates that were made for it, where it is a host. */
    byte[] host(String entry, byte[] file) {
        List<String> mates = nests.get(entry.endsWith(CLASS)
                ? entry.substring(0, entry.length() - CLASS.length()) : entry);
        if (mates == null) {
            return file;
        }
        ClassWriter writer = new ClassWriter(0);
        new ClassReader(file).accept(writer, 0);
        mates.forEach(writer::visitNestMember);
        return writer.toByteArray();
    }

    byte[] form(byte[] file) {
        ClassReader reader = new ClassReader(file);
        ClassWriter writer = new ClassWriter(reader, 0);
        reader.accept(new Owner(writer), 0);
        return writer.toByteArray();
    }

    /** One class. */
    private final class Owner extends ClassVisitor {
        private final List<Consumer<ClassVisitor>> methods = new ArrayList<>();
        private String name;
        private String host;
        private int version;
        private int lambdas;

        Owner(ClassWriter writer) {
            super(Opcodes.ASM9, writer);
        }

        @Override
        public void visit(int form, int access, String own, String generic, String parent, String[] roles) {
            name = own;
            host = own;
            version = form;
            super.visit(form, access, own, generic, parent, roles);
        }

        @Override
        public void visitNestHost(String nest) {
            host = nest;
            super.visitNestHost(nest);
        }

        @Override
        public MethodVisitor visitMethod(int access, String method, String type, String generic, String[] faults) {
            return new MethodVisitor(Opcodes.ASM9, super.visitMethod(access, method, type, generic, faults)) {
                @Override
                public void visitInvokeDynamicInsn(String call, String site, Handle maker, Object... given) {
                    String made = switch (maker.getOwner()) {
                        case SWITCHES -> choice(call, site, given);
                        case RECORDS -> record(call, site, given);
                        case LAMBDAS -> lambda(call, site, maker, given);
                        default -> null;
                    };
                    if (made == null) {
                        super.visitInvokeDynamicInsn(call, site, maker, given);
                    } else {
                        boolean own = !maker.getOwner().equals(LAMBDAS);
                        super.visitMethodInsn(Opcodes.INVOKESTATIC, own ? name : made, own ? made : "make", site,
                                false);
                    }
                }
            };
        }

        @Override
        public void visitEnd() {
            methods.forEach(each -> each.accept(cv));
            super.visitEnd();
        }

        private String method(String words, String type, int stack, int locals, Consumer<MethodVisitor> body) {
            String method = words + "$" + methods.size();
            methods.add(to -> {
                MethodVisitor code = to.visitMethod(Opcodes.ACC_PRIVATE | Opcodes.ACC_STATIC
                        | Opcodes.ACC_SYNTHETIC, method, type, null, null);
                code.visitCode();
                body.accept(code);
                code.visitMaxs(stack, locals);
                code.visitEnd();
            });
            return method;
        }

        /** Which type, from some number on, a thing is of: the number of none is how many there are. */
        private String choice(String call, String site, Object[] types) {
            if (!call.equals("typeSwitch") || !Stream.of(types).allMatch(each -> each instanceof Type type
                    && type.getSort() >= Type.ARRAY && type.getSort() <= Type.OBJECT)) {
                return null;
            }
            return method("choice", site, 2, 2, code -> {
                Label there = new Label();
                code.visitVarInsn(Opcodes.ALOAD, 0);
                code.visitJumpInsn(Opcodes.IFNONNULL, there);
                code.visitInsn(Opcodes.ICONST_M1);
                code.visitInsn(Opcodes.IRETURN);
                code.visitLabel(there);
                code.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
                for (int i = 0; i < types.length; i++) {
                    Label next = new Label();
                    code.visitVarInsn(Opcodes.ILOAD, 1);
                    code.visitIntInsn(Opcodes.SIPUSH, i);
                    code.visitJumpInsn(Opcodes.IF_ICMPGT, next);
                    code.visitVarInsn(Opcodes.ALOAD, 0);
                    code.visitTypeInsn(Opcodes.INSTANCEOF, ((Type) types[i]).getInternalName());
                    code.visitJumpInsn(Opcodes.IFEQ, next);
                    code.visitIntInsn(Opcodes.SIPUSH, i);
                    code.visitInsn(Opcodes.IRETURN);
                    code.visitLabel(next);
                    code.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
                }
                code.visitIntInsn(Opcodes.SIPUSH, types.length);
                code.visitInsn(Opcodes.IRETURN);
            });
        }

        private String record(String call, String site, Object[] given) {
            List<Handle> parts = Stream.of(given).skip(2).map(Handle.class::cast).toList();
            return switch (call) {
                case "hashCode" -> method("hash", site, 4, 1, code -> hash(code, parts));
                case "equals" -> method("same", site, 4, 3, code -> same(code, parts));
                default -> null;
            };
        }

        private static void hash(MethodVisitor code, List<Handle> parts) {
            code.visitInsn(Opcodes.ICONST_0);
            for (Handle part : parts) {
                code.visitIntInsn(Opcodes.BIPUSH, 31);
                code.visitInsn(Opcodes.IMUL);
                field(code, 0, part);
                int primitive = Lambda.PRIMITIVES.indexOf(part.getDesc());
                code.visitMethodInsn(Opcodes.INVOKESTATIC, primitive < 0 ? "java/util/Objects"
                        : Lambda.BOXES.get(primitive), "hashCode", primitive < 0 ? "(Ljava/lang/Object;)I"
                        : "(" + part.getDesc() + ")I", false);
                code.visitInsn(Opcodes.IADD);
            }
            code.visitInsn(Opcodes.IRETURN);
        }

        private void same(MethodVisitor code, List<Handle> parts) {
            Label other = new Label();
            code.visitVarInsn(Opcodes.ALOAD, 0);
            code.visitVarInsn(Opcodes.ALOAD, 1);
            code.visitJumpInsn(Opcodes.IF_ACMPNE, other);
            code.visitInsn(Opcodes.ICONST_1);
            code.visitInsn(Opcodes.IRETURN);
            code.visitLabel(other);
            code.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
            Label kin = new Label();
            code.visitVarInsn(Opcodes.ALOAD, 1);
            code.visitTypeInsn(Opcodes.INSTANCEOF, name);
            code.visitJumpInsn(Opcodes.IFNE, kin);
            code.visitInsn(Opcodes.ICONST_0);
            code.visitInsn(Opcodes.IRETURN);
            code.visitLabel(kin);
            code.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
            code.visitVarInsn(Opcodes.ALOAD, 1);
            code.visitTypeInsn(Opcodes.CHECKCAST, name);
            code.visitVarInsn(Opcodes.ASTORE, 2);
            Label differs = new Label();
            for (Handle part : parts) {
                field(code, 0, part);
                field(code, 2, part);
                int primitive = Lambda.PRIMITIVES.indexOf(part.getDesc());
                if (primitive < 0) {
                    code.visitMethodInsn(Opcodes.INVOKESTATIC, "java/util/Objects", "equals",
                            "(Ljava/lang/Object;Ljava/lang/Object;)Z", false);
                    code.visitJumpInsn(Opcodes.IFEQ, differs);
                } else if (primitive < INTEGERS) {
                    code.visitJumpInsn(Opcodes.IF_ICMPNE, differs);
                } else {
                    code.visitMethodInsn(Opcodes.INVOKESTATIC, Lambda.BOXES.get(primitive), "compare",
                            "(" + part.getDesc() + part.getDesc() + ")I", false);
                    code.visitJumpInsn(Opcodes.IFNE, differs);
                }
            }
            code.visitInsn(Opcodes.ICONST_1);
            code.visitInsn(Opcodes.IRETURN);
            if (!parts.isEmpty()) {
                code.visitLabel(differs);
                code.visitFrame(Opcodes.F_APPEND, 1, new Object[] {name}, 0, null);
                code.visitInsn(Opcodes.ICONST_0);
                code.visitInsn(Opcodes.IRETURN);
            }
        }

        private static void field(MethodVisitor code, int of, Handle part) {
            code.visitVarInsn(Opcodes.ALOAD, of);
            code.visitFieldInsn(Opcodes.GETFIELD, part.getOwner(), part.getName(), part.getDesc());
        }

        /** Makes the class of a lambda; null where that takes more than casts and boxes. */
        private String lambda(String call, String site, Handle maker, Object[] given) {
            if (!maker.getName().equals("metafactory")) {
                return null;
            }
            String own = name + "$$" + lambdas;
            byte[] file = new Lambda(own, host, version, call, Type.getMethodType(site), (Type) given[0],
                    (Handle) given[1], (Type) given[2]).file();
            if (file == null) {
                return null;
            }
            lambdas++;
            made.put(own, file);
            nests.computeIfAbsent(host, key -> new ArrayList<>()).add(own);
            return own;
        }
    }
}
