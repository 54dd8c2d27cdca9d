#!/usr/bin/env python3
"""Reads the image by the words of the OCI image specification alone, unpacks it and has it answer, on a file system that cannot be written, as the user that it names. Needs root, for mounts and chroot.

Arguments: the tar, a size run to ask for.
"""
import contextlib
import gzip
import hashlib
import io
import json
import os
import signal
import socket
import subprocess
import sys
import tarfile
import tempfile
import time
import urllib.request

PATIENCE = 180
WRITABLE = {"data"}


def check(true, what):
    if not true:
        sys.exit(f"image: {what}")


def blob(tar, descriptor):
    """The bytes of a descriptor, held against its digest and size (OCI image specification, descriptor.md)."""
    algorithm, digest = descriptor["digest"].split(":")
    check(algorithm == "sha256", f"digest by {algorithm}")
    data = tar.extractfile(f"blobs/sha256/{digest}").read()
    check(hashlib.sha256(data).hexdigest() == digest, f"{digest} does not agree with its digest")
    check(len(data) == descriptor["size"], f"{digest} has {len(data)} bytes, not {descriptor['size']}")
    return data


def unpacked(tar, into):
    check(json.load(tar.extractfile("oci-layout")) == {"imageLayoutVersion": "1.0.0"}, "no OCI layout")
    index = json.load(tar.extractfile("index.json"))
    check(len(index["manifests"]) == 1, "one manifest is expected")
    manifest = json.loads(blob(tar, index["manifests"][0]))
    config = json.loads(blob(tar, manifest["config"]))
    check(config["os"] == "linux", f"os {config['os']}")
    differences = config["rootfs"]["diff_ids"]
    check(len(differences) == len(manifest["layers"]), "as many layers as the configuration names")
    for descriptor, difference in zip(manifest["layers"], differences):
        layer = gzip.decompress(blob(tar, descriptor))
        check("sha256:" + hashlib.sha256(layer).hexdigest() == difference, f"layer {difference} does not agree")
        with tarfile.open(fileobj=io.BytesIO(layer)) as files:
            for file in files:
                check(not file.mode & 0o6000, f"{file.name} would run as another user")
                check(file.issym() or file.name.rstrip("/") in WRITABLE or not file.mode & 0o022, f"{file.name} can be written by others")
                check((file.uid, file.gid) == (0, 0), f"{file.name} is not root's")
            files.extractall(into, numeric_owner=True)
    return config["config"], len(differences)


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


@contextlib.contextmanager
def running(root, config, port):
    user, group = config["User"].split(":")
    check(int(user) > 0 and int(group) > 0, f"user {config['User']}")
    entry = config["Entrypoint"]
    check(os.access(root + entry[0], os.X_OK), f"{entry[0]} cannot be run")
    for folder in ("proc", "dev"):
        os.makedirs(f"{root}/{folder}", exist_ok=True)
    script = f"""set -e
mount --bind "$0" "$0"
mount -t proc proc "$0/proc"
mount -t tmpfs tmpfs "$0/dev"
mkdir "$0/dev/shm"
chmod 1777 "$0/dev/shm"
for one in null zero random urandom; do touch "$0/dev/$one"; mount --bind "/dev/$one" "$0/dev/$one"; done
mount -o remount,ro,bind "$0"
exec setpriv --bounding-set=-all,+sys_chroot,+setuid,+setgid --no-new-privs chroot --userspec={user}:{group} "$0" "$@"
"""
    environment = dict(one.split("=", 1) for one in config.get("Env", []))
    process = subprocess.Popen(
        ["unshare", "--mount", "--propagation=private", "sh", "-c", script, root, *entry, f"--server.port={port}"],
        env=environment | {"PATH": "/usr/sbin:/usr/bin:/sbin:/bin"}, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    try:
        yield process
    finally:
        process.send_signal(signal.SIGTERM)
        try:
            process.wait(60)
        except subprocess.TimeoutExpired:
            process.kill()
            sys.exit("image: it does not end when it is told to")


def answer(address, body=None, accept="application/json"):
    request = urllib.request.Request(address, body, {"Content-Type": "application/json", "Accept": accept})
    with urllib.request.urlopen(request, timeout=PATIENCE) as response:
        return response.read()


def main(image, run):
    with tempfile.TemporaryDirectory() as root:
        os.chmod(root, 0o755)
        with tarfile.open(image) as tar:
            config, layers = unpacked(tar, root)
        size = sum(os.path.getsize(os.path.join(folder, name)) for folder, _, names in os.walk(root) for name in names if not os.path.islink(os.path.join(folder, name)))
        port = free_port()
        with running(root, config, port) as process:
            address = f"http://127.0.0.1:{port}"
            begun = time.monotonic()
            while True:
                if process.poll() is not None or time.monotonic() - begun > PATIENCE:
                    sys.exit("image: it does not start:\n" + (process.stdout.read() if process.poll() is not None else ""))
                try:
                    check(json.loads(answer(address + "/actuator/health/readiness"))["status"] == "UP", "not ready")
                    break
                except OSError:
                    time.sleep(0.2)
            started = time.monotonic() - begun
            status = open(f"/proc/{process.pid}/status").read()
            for line in ("Uid", "Gid"):
                ids = next(one for one in status.splitlines() if one.startswith(line)).split()[1:]
                check(set(ids) == {config["User"].split(":")[line == "Gid"]}, f"it runs as {line} {ids}")
            with open(run, "rb") as body:
                gown = body.read()
            pdf = answer(address + "/v1/size-runs", gown, "application/pdf")
            check(pdf.startswith(b"%PDF-") and b"%%EOF" in pdf[-32:], "no PDF")
            sizes = [one["label"] for one in json.loads(answer(address + "/v1/size-runs", gown))["sizes"]]
            check(sizes == json.loads(gown)["sizes"], f"sizes {sizes}")
            check(answer(address + "/v1/size-runs", gown, "image/vnd.dxf").rstrip().endswith(b"EOF"), "no DXF")
    print(f"image: {os.path.getsize(image) / 1e6:.0f} MB, unpacked {size / 1e6:.0f} MB in {layers} layers that agree with their digests;"
          f" ready after {started:.1f} s as {config['User']} on a file system that cannot be written, and drew {len(sizes)} sizes")


main(*sys.argv[1:])
