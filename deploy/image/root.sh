#!/bin/sh
# Makes the file system below the service: a Java runtime by jlink, and of this machine's packages the C library, what else the runtime loads, certificate authorities and time zones. No shell and no package manager.
# Argument: the folder to make.
set -eu
root=$1
java=$(dirname "$(dirname "$(readlink -f "$(command -v jlink)")")")
rm -rf "$root"
mkdir -p "$root/opt" "$root/etc" "$root/tmp" "$root/data"
# What the service and its libraries ask for; encodings of old sheets, words of dates in French, and TLS are modules of their own.
"$java/bin/jlink" --output "$root/opt/java" --strip-java-debug-attributes --no-header-files --no-man-pages --compress=2 \
  --add-modules java.se,jdk.unsupported,jdk.charsets,jdk.crypto.ec,jdk.localedata,jdk.management,jdk.net,jdk.zipfs --include-locales=en,fr
# Nothing here shows or plays anything, so what would need a screen or a loudspeaker stays out with the libraries behind it.
(cd "$root/opt/java/lib" && rm -rf ../legal libawt_xawt.so libjawt.so libsplashscreen.so libjsound.so)
# Distributions keep settings and certificates elsewhere and link to them.
for link in $(find "$root/opt/java" -type l); do
  target=$(readlink -f "$link")
  rm "$link"
  cp -L "$target" "$link"
done
cp -L /etc/ssl/certs/java/cacerts "$root/opt/java/lib/security/cacerts"
# Every library that an executable or a library names and that is not the runtime's own, at the place where the loader looks for it.
{ find "$root/opt/java" -name '*.so'; echo "$root/opt/java/bin/java"; } | xargs ldd 2>/dev/null |
  sed -n 's/.*=> \(\/[^ ]*\) .*/\1/p; s/^[[:space:]]*\(\/lib[^ ]*ld-linux[^ ]*\) .*/\1/p' | sort -u | while read -r library; do
  case $library in "$root"*) continue ;; esac
  mkdir -p "$root$(dirname "$library")"
  cp -L "$library" "$root$library"
done
echo 'capwright:x:10001:10001::/data:/nonexistent' >"$root/etc/passwd"
echo 'capwright:x:10001:' >"$root/etc/group"
echo 'hosts: files dns' >"$root/etc/nsswitch.conf"
find "$root" -exec touch -h -d @0 {} +
