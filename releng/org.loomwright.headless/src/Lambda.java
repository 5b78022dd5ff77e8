// SPDX-License-Identifier: EPL-2.0

import java.util.List;
import java.util.stream.Stream;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/** The class of one lambda: a field for each thing that it captures, and the method that the interface asks for. */
final class Lambda {

    /** The primitive types, and what they are boxed as. */
    static final String PRIMITIVES = "ZBCSIJFD";
    static final List<String> BOXES = Stream.of("Boolean", "Byte", "Character", "Short", "Integer", "Long", "Float",
            "Double").map(name -> "java/lang/" + name).toList();

    private static final String OBJECT = "java/lang/Object";
    private static final String NEW = "<init>";
    private static final String ONE = "ONE";

    private final String name;
    private final String host;
    private final int version;
    private final String method;
    private final Type site;
    private final Type asked;
    private final Handle body;
    private final Type meant;
    private boolean understood = true;

    /**
     * @param name    of the class
     * @param host    whose nest it belongs to
     * @param version of the form of the class file
     * @param method  the method of the interface
     * @param site    what is captured, and the interface
     * @param asked   the type of the method of the interface
     * @param body    what is called
     * @param meant   the same type as it is used
     */
    Lambda(String name, String host, int version, String method, Type site, Type asked, Handle body, Type meant) {
        this.name = name;
        this.host = host;
        this.version = version;
        this.method = method;
        this.site = site;
        this.asked = asked;
        this.body = body;
        this.meant = meant;
    }

    /** The class file; null where it would take more than casts, boxes and their opposites. */
    byte[] file() {
        ClassWriter to = new ClassWriter(ClassWriter.COMPUTE_MAXS);
        String[] role = {site.getReturnType().getInternalName()};
        to.visit(version, Opcodes.ACC_FINAL | Opcodes.ACC_SUPER | Opcodes.ACC_SYNTHETIC, name, null, OBJECT, role);
        to.visitNestHost(host);
        Type[] held = site.getArgumentTypes();
        for (int i = 0; i < held.length; i++) {
            to.visitField(Opcodes.ACC_PRIVATE | Opcodes.ACC_FINAL, "f" + i, held[i].getDescriptor(), null, null)
                    .visitEnd();
        }
        constructor(to, held);
        maker(to, held);
        call(to, held);
        to.visitEnd();
        return understood ? to.toByteArray() : null;
    }

    private void constructor(ClassWriter to, Type[] held) {
        MethodVisitor code = to.visitMethod(Opcodes.ACC_PRIVATE, NEW, Type.getMethodDescriptor(Type.VOID_TYPE, held),
                null, null);
        code.visitCode();
        code.visitVarInsn(Opcodes.ALOAD, 0);
        code.visitMethodInsn(Opcodes.INVOKESPECIAL, OBJECT, NEW, "()V", false);
        int at = 1;
        for (int i = 0; i < held.length; i++) {
            code.visitVarInsn(Opcodes.ALOAD, 0);
            code.visitVarInsn(held[i].getOpcode(Opcodes.ILOAD), at);
            code.visitFieldInsn(Opcodes.PUTFIELD, name, "f" + i, held[i].getDescriptor());
            at += held[i].getSize();
        }
        end(code, Opcodes.RETURN);
    }

    /** One that captures nothing is always the same object. */
    private void maker(ClassWriter to, Type[] held) {
        MethodVisitor code = to.visitMethod(Opcodes.ACC_STATIC, "make", site.getDescriptor(), null, null);
        code.visitCode();
        String own = "L" + name + ";";
        if (held.length == 0) {
            to.visitField(Opcodes.ACC_PRIVATE | Opcodes.ACC_STATIC | Opcodes.ACC_FINAL, ONE, own, null, null)
                    .visitEnd();
            code.visitFieldInsn(Opcodes.GETSTATIC, name, ONE, own);
            end(code, Opcodes.ARETURN);
            MethodVisitor first = to.visitMethod(Opcodes.ACC_STATIC, "<clinit>", "()V", null, null);
            first.visitCode();
            make(first, held);
            first.visitFieldInsn(Opcodes.PUTSTATIC, name, ONE, own);
            end(first, Opcodes.RETURN);
        } else {
            make(code, held);
            end(code, Opcodes.ARETURN);
        }
    }

    private void make(MethodVisitor code, Type[] held) {
        code.visitTypeInsn(Opcodes.NEW, name);
        code.visitInsn(Opcodes.DUP);
        int at = 0;
        for (Type each : held) {
            code.visitVarInsn(each.getOpcode(Opcodes.ILOAD), at);
            at += each.getSize();
        }
        code.visitMethodInsn(Opcodes.INVOKESPECIAL, name, NEW, Type.getMethodDescriptor(Type.VOID_TYPE, held), false);
    }

    private void call(ClassWriter to, Type[] held) {
        MethodVisitor code = to.visitMethod(Opcodes.ACC_PUBLIC, method, asked.getDescriptor(), null, null);
        code.visitCode();
        Type owner = Type.getObjectType(body.getOwner());
        boolean makes = body.getTag() == Opcodes.H_NEWINVOKESPECIAL;
        boolean receives = !makes && body.getTag() != Opcodes.H_INVOKESTATIC;
        if (makes) {
            code.visitTypeInsn(Opcodes.NEW, body.getOwner());
            code.visitInsn(Opcodes.DUP);
        }
        Type[] wanted = Type.getArgumentTypes(body.getDesc());
        int next = receives ? -1 : 0;
        for (int i = 0; i < held.length; i++) {
            code.visitVarInsn(Opcodes.ALOAD, 0);
            code.visitFieldInsn(Opcodes.GETFIELD, name, "f" + i, held[i].getDescriptor());
            convert(code, held[i], next < 0 ? owner : wanted[next]);
            next++;
        }
        int at = 1;
        for (int i = 0; i < asked.getArgumentTypes().length; i++) {
            Type given = asked.getArgumentTypes()[i];
            code.visitVarInsn(given.getOpcode(Opcodes.ILOAD), at);
            at += given.getSize();
            convert(code, given, meant.getArgumentTypes()[i]);
            convert(code, meant.getArgumentTypes()[i], next < 0 ? owner : wanted[next]);
            next++;
        }
        code.visitMethodInsn(operation(), body.getOwner(), body.getName(), body.getDesc(), body.isInterface());
        Type made = makes ? owner : Type.getReturnType(body.getDesc());
        Type result = asked.getReturnType();
        if (result.getSort() != Type.VOID) {
            convert(code, made, meant.getReturnType());
            convert(code, meant.getReturnType(), result);
        } else if (made.getSort() != Type.VOID) {
            code.visitInsn(made.getSize() == 2 ? Opcodes.POP2 : Opcodes.POP);
        }
        end(code, result.getOpcode(Opcodes.IRETURN));
    }

    /** Private methods are called like others: the class belongs to their nest. */
    private int operation() {
        return switch (body.getTag()) {
            case Opcodes.H_INVOKESTATIC -> Opcodes.INVOKESTATIC;
            case Opcodes.H_NEWINVOKESPECIAL -> Opcodes.INVOKESPECIAL;
            case Opcodes.H_INVOKEVIRTUAL -> Opcodes.INVOKEVIRTUAL;
            case Opcodes.H_INVOKEINTERFACE -> Opcodes.INVOKEINTERFACE;
            case Opcodes.H_INVOKESPECIAL -> body.isInterface() ? Opcodes.INVOKEINTERFACE : Opcodes.INVOKEVIRTUAL;
            default -> {
                understood = false;
                yield Opcodes.NOP;
            }
        };
    }

    private static void end(MethodVisitor code, int how) {
        code.visitInsn(how);
        code.visitMaxs(0, 0);
        code.visitEnd();
    }

    private void convert(MethodVisitor code, Type from, Type to) {
        if (from.equals(to)) {
            return;
        }
        boolean fromThing = from.getSort() >= Type.ARRAY;
        boolean toThing = to.getSort() >= Type.ARRAY;
        if (fromThing && toThing) {
            if (!to.getInternalName().equals(OBJECT)) {
                code.visitTypeInsn(Opcodes.CHECKCAST, to.getInternalName());
            }
        } else if (toThing) {
            String box = box(from);
            code.visitMethodInsn(Opcodes.INVOKESTATIC, box, "valueOf", "(" + from.getDescriptor() + ")L" + box + ";",
                    false);
            understood &= List.of(box, OBJECT, "java/lang/Number", "java/lang/Comparable")
                    .contains(to.getInternalName());
        } else if (fromThing && BOXES.contains(from.getInternalName())) {
            Type inside = Type.getType(PRIMITIVES.substring(BOXES.indexOf(from.getInternalName())).substring(0, 1));
            code.visitMethodInsn(Opcodes.INVOKEVIRTUAL, from.getInternalName(), inside.getClassName() + "Value",
                    "()" + inside.getDescriptor(), false);
            understood &= inside.equals(to);
        } else {
            understood = false;
        }
    }

    private String box(Type primitive) {
        int at = PRIMITIVES.indexOf(primitive.getDescriptor());
        understood &= at >= 0;
        return at < 0 ? OBJECT : BOXES.get(at);
    }
}
