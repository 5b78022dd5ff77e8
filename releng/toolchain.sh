# Sourced by ./loomwright and ./verify: finds a JDK and Maven, and builds under a lock. Bash and POSIX tools only.
# Whoever sources it sets `top` (the repository's top folder) and `self` (the name in front of messages).

least_jdk=21
maven_version=3.9.11
loom_cache=${XDG_CACHE_HOME:-$HOME/.cache}/loomwright

say() { printf '%s: %s\n' "$self" "$*" >&2; }

give_up() {
    say "$*"
    exit 2
}

# Sets jdk_major and jdk_version of the JDK in folder $1; fails if there is none. Starts no process.
read_jdk() {
    local key value
    jdk_major=
    jdk_version=
    [ -x "$1/bin/javac" ] && [ -r "$1/release" ] || return 1
    while IFS='=' read -r key value; do
        value=${value%$'\r'}
        value=${value#\"}
        value=${value%\"}
        case $key in
            JAVA_VERSION) jdk_major=${value%%[.-]*} ;;
            JAVA_RUNTIME_VERSION | IMPLEMENTOR_VERSION | IMPLEMENTOR) jdk_version=$jdk_version-$value ;;
        esac
    done < "$1/release"
    case $jdk_major in
        '' | *[!0-9]*) return 1 ;;
    esac
}

new_enough() { read_jdk "$1" && [ "$jdk_major" -ge "$least_jdk" ]; }

# Sets jdk to the folder of a JDK that is new enough: JAVA_HOME, then the java on the PATH, then the usual folders.
find_jdk() {
    local home java best best_major
    if [ -n "${JAVA_HOME:-}" ] && new_enough "$JAVA_HOME"; then
        jdk=$JAVA_HOME
        return 0
    fi
    java=$(command -v java) || java=
    if [ -n "$java" ]; then
        java=$(readlink -f "$java" 2> /dev/null) || java=
        home=${java%/bin/java}
        if [ -n "$home" ] && new_enough "$home"; then
            jdk=$home
            return 0
        fi
    fi
    best=
    best_major=0
    for home in /usr/lib/jvm/* /opt/* /opt/java/* /usr/local/* "$HOME"/.sdkman/candidates/java/* "$HOME"/.jdks/* \
        /Library/Java/JavaVirtualMachines/*/Contents/Home; do
        if new_enough "$home" && [ "$jdk_major" -gt "$best_major" ]; then
            best=$home
            best_major=$jdk_major
        fi
    done
    [ -n "$best" ] || return 1
    jdk=$best
    read_jdk "$jdk"
}

need_jdk() {
    find_jdk || give_up "no JDK $least_jdk or newer found; install one (Debian: apt-get install openjdk-21-jdk, or any" \
        "newer) or set JAVA_HOME to its folder"
    export JAVA_HOME=$jdk
}

# True if the Maven in $1 is 3.9 or newer.
maven_is_new() {
    local words
    words=$(cd / && "$1" -version 2> /dev/null | sed -n 's/.*Apache Maven \([0-9][0-9]*\)\.\([0-9][0-9]*\).*/\1 \2/p' | head -n 1)
    [ -n "$words" ] || return 1
    [ "${words% *}" -gt 3 ] || { [ "${words% *}" -eq 3 ] && [ "${words#* }" -ge 9 ]; }
}

# Sets maven to a Maven that is new enough: the installed one, or one that the installed one fetches as an ordinary artifact.
need_maven() {
    local installed fetched new log
    fetched=$loom_cache/apache-maven-$maven_version/bin/mvn
    if [ -x "$fetched" ]; then
        maven=$fetched
        return 0
    fi
    installed=$(command -v mvn) || give_up "Maven is missing; install it (Debian: apt-get install maven)"
    if maven_is_new "$installed"; then
        maven=$installed
        return 0
    fi
    say "the installed Maven is older than 3.9: fetching $maven_version, once (about 10 s)"
    new=$loom_cache/fetch.$$
    log=$loom_cache/fetch.log
    mkdir -p "$new" || give_up "cannot write to $loom_cache; set XDG_CACHE_HOME to a folder that can be written"
    if (cd "$new" && "$installed" -B -q org.apache.maven.plugins:maven-dependency-plugin:3.8.1:copy \
        -Dartifact=org.apache.maven:apache-maven:$maven_version:zip:bin -DoutputDirectory="$new" \
        && "$jdk/bin/jar" xf "apache-maven-$maven_version-bin.zip") > "$log" 2>&1; then
        chmod +x "$new/apache-maven-$maven_version/bin/mvn"
        # the other run's result serves as well, when two fetched at a time
        mv "$new/apache-maven-$maven_version" "$loom_cache/" 2> /dev/null || [ -x "$fetched" ]
        rm -rf "$new"
        maven=$fetched
        return 0
    fi
    rm -rf "$new"
    give_up "Maven $maven_version could not be fetched; check the network, or install Maven 3.9 or newer (log: $log)"
}

# Takes the build lock of this checkout, waiting for another build if need be. It is let go when the process ends.
lock_build() {
    local lock=$top/releng/target/build.lock other
    mkdir -p "$top/releng/target" || give_up "cannot write to $top/releng"
    if command -v flock > /dev/null 2>&1; then
        exec 9> "$lock"
        flock -n 9 || { say "another build is running here: waiting for it"; flock 9; }
        return 0
    fi
    while ! mkdir "$lock.d" 2> /dev/null; do
        other=$(cat "$lock.d/pid" 2> /dev/null) || other=
        if [ -n "$other" ] && ! kill -0 "$other" 2> /dev/null; then
            rm -rf "$lock.d"
            continue
        fi
        [ -n "${said:-}" ] || say "another build is running here: waiting for it"
        said=yes
        sleep 1
    done
    echo $$ > "$lock.d/pid"
    trap 'rm -rf "$top/releng/target/build.lock.d"' EXIT
}

unlock_build() {
    if command -v flock > /dev/null 2>&1; then
        exec 9>&-
    else
        rm -rf "$top/releng/target/build.lock.d"
        trap - EXIT
    fi
}

# Says in one line why the Maven run that wrote log $1 failed, after its last lines that tell something.
explain_failure() {
    if grep -qE 'UnknownHostException|Network is unreachable|Connection (refused|timed out)|Connect timed out|No route to host|Temporary failure in name resolution|in offline mode' "$1"; then
        say "the libraries could not be fetched: this first build needs the network (log: $1)"
        return 0
    fi
    grep -E '^\[ERROR\]|^ERROR|^[0-9]+ .*ERROR' "$1" | grep -vE 'Re-run Maven|re-run Maven|full stack trace|For more information|Help 1\]|^\[ERROR\] *$|After correcting|mvn <args>' \
        | cut -c1-400 | tail -n 25 >&2
    say "the build failed (log: $1)"
}
