#!/usr/bin/env bash
# Tests ./loomwright and releng/toolchain.sh on a small stand-in for the checkout: a one-class command line, and a Maven that
# notes that it was called and packs that class. Prints one line a check: "ok NAME" or "failed NAME".
set -u
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd -P) || exit 2
self=loomwright-test
. "$top/releng/toolchain.sh"
need_jdk
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
failures=0

check() { # check NAME COMMAND...
    local name=$1
    shift
    if "$@"; then
        printf 'ok %s\n' "$name"
    else
        printf 'failed %s\n' "$name"
        sed 's/^/    /' "$work/out" "$work/err" 2> /dev/null | tail -n 20
        failures=$((failures + 1))
    fi
}

# ---------------------------------------------------------------- the stand-in
tree=$work/'a checkout'
home=$tree/releng/org.loomwright.headless/target/headless
sources=$tree/bundles/org.loomwright.cli/src
mkdir -p "$sources" "$tree/releng/org.loomwright.headless/src" "$tree/.mvn" "$work/tools" "$work/cache"
cp "$top/loomwright" "$tree/"
cp "$top/releng/toolchain.sh" "$tree/releng/"
cp "$top"/releng/org.loomwright.headless/src/*.java "$tree/releng/org.loomwright.headless/src/"
: > "$tree/pom.xml"

write_main() { # write_main WORD: the command line answers with WORD
    mkdir -p "$sources/org/loomwright/cli"
    cat > "$sources/org/loomwright/cli/Main.java" << EOF
package org.loomwright.cli;

public final class Main {
    public static void main(String[] arguments) {
        if (arguments.length > 0 && arguments[0].equals("exit")) {
            System.exit(Integer.parseInt(arguments[1]));
        }
        if (java.util.List.of(arguments).contains("flags")) {
            System.out.println(java.lang.management.ManagementFactory.getRuntimeMXBean().getInputArguments());
        }
        if (arguments.length > 0 && arguments[0].equals("shapes")) {
            shapes(arguments.length);
        }
        System.out.println("$1 " + String.join("|", arguments));
    }

    private record Size(int count, double mass, String name, long[] cells) {
    }

    private final int held;

    private Main(int held) {
        this.held = held;
    }

    private int plus(int more) {
        return held + more;
    }

    private static String sort(Object thing) {
        return switch (thing) {
            case null -> "nothing";
            case Size size when size.count() > 1 -> "sizes " + size.name();
            case Size size -> "a size " + size.name();
            case Integer number -> "number " + number;
            case int[] numbers -> "numbers " + numbers.length;
            default -> "other";
        };
    }

    private static void shapes(int count) {
        Size one = new Size(count, 0.5, "a", null);
        java.util.List<Object> things = new java.util.ArrayList<>(java.util.List.of(one, new Size(2, -0.0, "b", null), 7,
                new int[2], "word", new Size(count, 0.5, new String("a"), null)));
        things.add(null);
        for (Object thing : things) {
            System.out.println(sort(thing) + " " + one.equals(thing) + " " + (thing instanceof Size ? thing.hashCode() : 0));
        }
        System.out.println(new Size(2, 0.0, "b", null).equals(things.get(1)));
        java.util.function.IntFunction<Main> maker = Main::new;
        java.util.function.Function<Integer, Integer> boxed = maker.apply(count)::plus;
        java.util.function.ToLongFunction<String> length = word -> word.length() + (long) count;
        java.util.function.BiFunction<Integer, Integer, Integer> most = Math::max;
        java.util.function.Supplier<int[]> numbers = () -> new int[count];
        java.util.function.Supplier<Object> number = things::size;
        java.util.function.Consumer<String> added = things::add;
        added.accept("more");
        System.out.println(boxed.apply(4) + " " + length.applyAsLong("four") + " " + most.apply(2, 3) + " "
                + numbers.get().length + " " + number.get() + " "
                + things.stream().filter(Integer.class::isInstance).map(Integer.class::cast).mapToInt(each -> each).sum());
    }
}
EOF
}

cat > "$work/tools/mvn" << EOF
#!/usr/bin/env bash
if [ "\${1:-}" = -version ]; then
    echo "Apache Maven \${MAVEN_SAYS:-3.9.11} (a stand-in)"
    exit 0
fi
echo "\$*" >> "$work/maven-calls"
[ -z "\${MAVEN_FAILS:-}" ] || { printf '%s\n' "\$MAVEN_FAILS"; exit 1; }
set -e
began=\$(date -u +%Y-%m-%dT%H:%M:%S.000Z)
sleep "\${MAVEN_TAKES:-0}"
rm -rf "$work/classes" && mkdir "$work/classes"
"$jdk/bin/javac" -d "$work/classes" "$sources/org/loomwright/cli/Main.java"
"$jdk/bin/jar" cf "$work/org.loomwright.cli-1.jar" -C "$work/classes" .
echo "$work/org.loomwright.cli-1.jar" > "$work/jars.txt"
tools=$top/releng/org.loomwright.headless/target/tools
"$jdk/bin/java" -cp "\$tools/asm.jar:\$tools" Assemble "$work/jars.txt" "$home" "\$began"
EOF
chmod +x "$work/tools/mvn"

loom() { PATH=$work/tools:$PATH XDG_CACHE_HOME=$work/cache "$tree/loomwright" "$@" > "$work/out" 2> "$work/err" < /dev/null; }
calls() { if [ -f "$work/maven-calls" ]; then wc -l < "$work/maven-calls"; else echo 0; fi; }

# ---------------------------------------------------------------- building and running
write_main one
touch -d '1 hour ago' "$sources/org/loomwright/cli/Main.java" "$sources/org/loomwright/cli" "$sources/org/loomwright" \
    "$sources/org" "$sources" "$tree/pom.xml" "$tree/.mvn" "$tree/releng/org.loomwright.headless/src" \
    "$tree"/releng/org.loomwright.headless/src/*.java

first_run() {
    loom check 'two words' && [ "$(cat "$work/out")" = 'one check|two words' ] && [ "$(calls)" -eq 1 ] \
        && grep -q 'building' "$work/err" && grep -q 'faster start' "$work/err"
}
check 'the first run builds, says so, and passes arguments on' first_run

second_run() { loom check && [ "$(cat "$work/out")" = 'one check' ] && [ "$(calls)" -eq 1 ] && [ ! -s "$work/err" ]; }
check 'a second run builds nothing and says nothing' second_run

written_out() {
    loom shapes && "$jdk/bin/java" -cp "$work/classes" org.loomwright.cli.Main shapes > "$work/shapes" \
        && cmp -s "$work/shapes" "$work/out" && [ "$(wc -l < "$work/out")" -eq 10 ] \
        && "$jdk/bin/javap" -p -c -cp "$home/lib/org.loomwright.cli.jar" org.loomwright.cli.Main > "$work/code" \
        && grep -q 'Main\$\$' "$work/code" && ! grep -q 'Dynamic.*\(typeSwitch\|apply\|accept\):' "$work/code"
}
check 'lambdas, records and switches over types are written out, and do the same' written_out

other_folder() { (cd / && loom check) && [ "$(cat "$work/out")" = 'one check' ]; }
check 'it runs from any folder' other_folder

by_link() {
    ln -s "$tree/loomwright" "$work/link"
    PATH=$work/tools:$PATH XDG_CACHE_HOME=$work/cache "$work/link" check > "$work/out" 2> "$work/err" && [ "$(cat "$work/out")" = 'one check' ]
}
check 'it runs through a symbolic link' by_link

exit_code() { loom exit 3; [ $? -eq 3 ]; }
check 'the exit code is passed on' exit_code

changed_source() {
    write_main two
    loom check && [ "$(cat "$work/out")" = 'two check' ] && [ "$(calls)" -eq 2 ]
}
check 'after a change the new code runs, never an old one from the start-up cache' changed_source

changed_jar() { # as when ./verify or Maven rebuilt the jar
    write_main three
    PATH=$work/tools:$PATH mvn verify > /dev/null 2>&1
    loom check && [ "$(cat "$work/out")" = 'three check' ]
}
check 'a jar that something else rebuilt runs with its new code' changed_jar

# ---------------------------------------------------------------- flags
small_input() { loom flags && grep -q 'TieredStopAtLevel=1' "$work/out"; }
check 'small inputs get start-up flags' small_input

large_input() {
    mkdir -p "$work/large"
    head -c 2100000 /dev/zero | tr '\0' 'x' > "$work/large/big.loom"
    loom flags "$work/large" && ! grep -q 'TieredStopAtLevel=' "$work/out" && grep -q 'ParallelGC' "$work/out"
}
check 'large inputs get throughput flags' large_input

since_input() {
    loom check --since HEAD "$work/large" flags && grep -q 'TieredStopAtLevel=1' "$work/out" \
        && loom check --since=HEAD "$work/large" flags && grep -q 'TieredStopAtLevel=1' "$work/out" \
        && loom check --no-cache --since HEAD "$work/large" flags && grep -q 'ParallelGC' "$work/out" \
        && loom compare --since "$work/large" flags && grep -q 'ParallelGC' "$work/out"
}
check 'what is kept spares the throughput flags, unless it is not wanted' since_input

large_pages() { # asked for where the system has them, and the JVM has nothing to complain of
    local has=no
    ! grep -qsE '\[(madvise|always)\]' /sys/kernel/mm/transparent_hugepage/enabled || has=yes
    loom flags && [ ! -s "$work/err" ] && { [ "$has" = no ] || grep -q 'UseTransparentHugePages' "$work/out"; }
}
check 'memory comes in large pages where the system has them' large_pages

cache_used() { loom flags && grep -qE 'XX:(AOTCache|SharedArchiveFile)=' "$work/out"; }
check 'the start-up cache is used' cache_used

kinds_of_cache() {
    loom check && loom check --since HEAD && loom flags && [ "$(ls "$home/start" | grep -cE '^(check|since|rest)-')" -eq 3 ] \
        && grep -qE '(AOTCache|SharedArchiveFile)=.*/start/rest-' "$work/out"
}
check 'checks have start-up caches of their own, and none is left of an earlier build' kinds_of_cache

build_named() { loom flags && grep -q "Dloomwright.build=$(head -n 1 "$tree/releng/org.loomwright.headless/target/headless/hash")" "$work/out"; }
check 'the program is told which build it is' build_named

# ---------------------------------------------------------------- failures
compile_error() {
    touch "$sources/org/loomwright/cli/Main.java"
    MAVEN_FAILS='[ERROR] Main.java:[3] something is wrong' loom check
    [ $? -eq 2 ] && grep -q 'something is wrong' "$work/err" && grep -q 'log: ' "$work/err" && [ ! -s "$work/out" ]
}
check 'a failed build shows its last lines and the log, and ends with 2' compile_error

no_network() {
    MAVEN_FAILS='[ERROR] ... : UnknownHostException: some.host' loom check
    [ $? -eq 2 ] && grep -q 'needs the network' "$work/err" && [ "$(grep -vc 'building' "$work/err")" -eq 1 ]
}
check 'a missing network is told in one line, and ends with 2' no_network

two_builds() {
    local before
    before=$(calls)
    touch "$sources/org/loomwright/cli/Main.java"
    sleep 1 # the stand-in's time of the build is in whole seconds
    (MAVEN_TAKES=2 PATH=$work/tools:$PATH XDG_CACHE_HOME=$work/cache "$tree/loomwright" check > "$work/other" 2>&1 < /dev/null) &
    sleep 1
    loom check && wait && [ "$(cat "$work/out")" = 'three check' ] && grep -q 'three check' "$work/other" \
        && [ "$(calls)" -eq $((before + 1)) ] && grep -q 'waiting' "$work/err"
}
check 'two runs at a time build once' two_builds

# a PATH with the usual tools, but without java and Maven
mkdir -p "$work/bare"
for tool in bash env dirname find head cat wc readlink sed grep tail rm mkdir mv cp chmod date sleep flock cut touch tee awk tr; do
    path=$(command -v "$tool") && ln -sf "$path" "$work/bare/$tool"
done

no_maven() {
    touch "$sources/org/loomwright/cli/Main.java"
    PATH=$work/bare JAVA_HOME=$jdk XDG_CACHE_HOME=$work/nothing "$tree/loomwright" check > "$work/out" 2> "$work/err"
    [ $? -eq 2 ] && grep -q 'Maven is missing' "$work/err" && [ "$(wc -l < "$work/err")" -eq 1 ]
}
check 'a missing Maven is told in one line, and ends with 2' no_maven

old_jdk() { # JAVA_HOME is too old, so another is looked for
    mkdir -p "$work/old/bin"
    : > "$work/old/bin/javac"
    chmod +x "$work/old/bin/javac"
    echo 'JAVA_VERSION="17.0.15"' > "$work/old/release"
    (JAVA_HOME=$work/old && find_jdk && [ "$jdk" != "$work/old" ] && [ "$jdk_major" -ge 21 ])
}
check 'a JAVA_HOME that is too old is passed over' old_jdk

no_jdk() {
    (
        least_jdk=999
        need_jdk
    ) 2> "$work/err"
    [ $? -eq 2 ] && grep -q 'no JDK 999 or newer' "$work/err" && [ "$(wc -l < "$work/err")" -eq 1 ]
}
check 'a missing JDK is told in one line, and ends with 2' no_jdk

old_maven() {
    PATH=$work/tools:$PATH MAVEN_SAYS=3.8.7 maven_is_new "$work/tools/mvn" && return 1
    MAVEN_SAYS=3.9.0 maven_is_new "$work/tools/mvn" && MAVEN_SAYS=4.0.1 maven_is_new "$work/tools/mvn"
}
check 'Maven 3.9 and newer will do, 3.8 will not' old_maven

# ---------------------------------------------------------------- the real jars
unsigned() {
    local jar jars=0
    for jar in "$top"/releng/org.loomwright.headless/target/headless/lib/*.jar; do
        [ -f "$jar" ] || return 1
        jars=$((jars + 1))
        ! "$jdk/bin/jar" tf "$jar" | grep -qE '^META-INF/[^/]+\.(SF|RSA|DSA|EC)$' || return 1
    done
    [ "$jars" -gt 10 ]
}
check 'no jar of the distribution is signed' unsigned

printf '%s\n' "$([ "$failures" -eq 0 ] && echo 'the scripts do what they should' || echo "$failures failed")"
[ "$failures" -eq 0 ]
