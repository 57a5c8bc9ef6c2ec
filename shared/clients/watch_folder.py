"""Posts every new table of a workstation's export folder to a Surfeit service, once.

    python3 watch_folder.py EXPORT_FOLDER --url http://lab-server:8420

Every folder inside EXPORT_FOLDER is a sample of that name (or give --sample NAME: then the tables lie in
EXPORT_FOLDER itself). A file sample.json in it describes a sample the service does not know yet. A table that was
recorded goes to the folder done beside it, with the report as NAME.report.json; one that was refused goes to refused,
with the faults line by line as NAME.faults.txt: correct the table and put it back. Nothing is overwritten or deleted.

A file is taken once it has not changed for --settle seconds and can be read. While the service is away, or wants
another token, files stay where they are and are tried again. A crash between posting and moving does no harm: the file
is posted again under the same key, and the service records it once. The token comes from SURFEIT_TOKEN or from
--token-file.

The standard library only, Python 3.8 or newer, beside surfeit.py. Run by the project's own tests.
"""

import argparse
import json
import os
import signal
import sys
import threading
import time

sys.dont_write_bytecode = True  # leave nothing beside this file

from surfeit import Away, Lab, Refused, content_key

TABLES = (".csv", ".tsv", ".txt", ".ndjson", ".json")
UNFINISHED = (".part", ".tmp", ".crdownload", ".partial")
DESCRIPTION = "sample.json"
DONE = "done"
REFUSED = "refused"
FIRST_WAIT_S = 1.0
LONGEST_WAIT_S = 60.0
# Refusals that are about who asks, not about the file.
OF_THE_TOKEN = (401, 403)
# A fault of the service that may come from this one file: the others go on.
OF_ONE_FILE = 500
# How a round ended.
NOTHING_LEFT, SETTLING, WAITING = "nothing left", "settling", "waiting"


class Watch:
    """Looks at a folder again and again. For one thread."""

    def __init__(self, lab, folder, sample=None, settle_s=5.0, options=None, say=print, now=time.time):
        self.lab = lab
        self.folder = folder
        self.only_sample = sample
        self.settle_s = settle_s
        self.options = options or {}
        self.say = say
        self.now = now
        self.wait_s = FIRST_WAIT_S
        self._seen = {}
        self._said = {}

    def look(self):
        """One round over all files.

        NOTHING_LEFT, SETTLING where one is still being written, or WAITING for the service or for a file to be free.
        """
        found = {NOTHING_LEFT}
        for sample, folder in self._samples():
            for name in self._tables(folder):
                if not self._settled(os.path.join(folder, name)):
                    found.add(SETTLING)
                    continue
                try:
                    if not self._take(sample, folder, name):
                        found.add(WAITING)
                except Away as away:
                    self._say_once("service", "waiting  %s in %s: %s" % (name, folder, away))
                    self.wait_s = away.retry_after_s or min(self.wait_s * 2, LONGEST_WAIT_S)
                    if away.status != OF_ONE_FILE:
                        return WAITING
                    found.add(WAITING)
        if WAITING in found:
            return WAITING
        self.wait_s = FIRST_WAIT_S
        return SETTLING if SETTLING in found else NOTHING_LEFT

    def _samples(self):
        if self.only_sample is not None:
            return [(self.only_sample, self.folder)]
        with os.scandir(self.folder) as entries:
            names = sorted(entry.name for entry in entries if entry.is_dir() and not entry.name.startswith("."))
        return [(name, os.path.join(self.folder, name)) for name in names if name not in (DONE, REFUSED)]

    @staticmethod
    def _tables(folder):
        with os.scandir(folder) as entries:
            names = sorted(entry.name for entry in entries if entry.is_file(follow_symlinks=False))
        return [name for name in names if name.lower().endswith(TABLES) and not name.lower().endswith(UNFINISHED)
                and not name.startswith((".", "~")) and name != DESCRIPTION]

    def _settled(self, path):
        """True once the file has kept its size and time for a while; an empty one is still to be written."""
        try:
            state = _state(path)
        except OSError:
            return False
        before = self._seen.get(path)
        if before is None or before[0] != state:
            self._seen[path] = before = (state, self.now())
        return state[0] > 0 and self.now() - before[1] >= self.settle_s

    def _take(self, sample, folder, name):
        """Posts a file and moves it; False where it is not free yet."""
        path = os.path.join(folder, name)
        try:
            state = _state(path)
            with open(path, "rb") as file:
                content = file.read()
        except OSError as locked:
            self._say_once(path, "waiting  %s cannot be read: %s" % (path, locked))
            return False
        try:
            report = self._post(sample, folder, name, content)
        except Refused as refusal:
            if refusal.status in OF_THE_TOKEN:
                raise Away("%s; the files stay where they are" % refusal, refusal.status) from None
            self.say("refused  %s: %s" % (path, refusal.detail))
            return self._move(path, state, REFUSED, ".faults.txt",
                              "\n".join([refusal.detail, ""] + refusal.faults).rstrip() + "\n")
        self._said.pop("service", None)
        self.say("recorded %s: %d new, %d known spots of %s"
                 % (path, report["accepted_count"], report["unchanged_count"], sample))
        return self._move(path, state, DONE, ".report.json", json.dumps(report, indent=2, ensure_ascii=False) + "\n")

    def _post(self, sample, folder, name, content):
        try:
            return self._post_table(sample, name, content)
        except Refused as refusal:
            description = os.path.join(folder, DESCRIPTION)
            if refusal.code != "not-found":
                raise
            if not os.path.isfile(description):
                hint = "%s Describe it to the service, or put a file %s beside the table."
                raise Refused(refusal.status, {"detail": hint % (refusal.detail, DESCRIPTION)}) from None
            with open(description, encoding="utf-8") as file:
                try:
                    described = json.load(file)
                except ValueError as broken:
                    raise Refused(0, {"detail": "%s is not JSON: %s" % (description, broken)}) from None
            self.lab.put_sample(sample, described)
            return self._post_table(sample, name, content)

    def _post_table(self, sample, name, content):
        return self.lab.post_bytes(sample, content, name, key=content_key(sample, content), **self.options)

    def _move(self, path, state, to, ending, note):
        """Puts the file into a folder with a note beside it. False where it has to stay."""
        folder = os.path.join(os.path.dirname(path), to)
        self._seen.pop(path, None)
        reserved = None
        try:
            if _state(path) != state:
                return False
            os.makedirs(folder, exist_ok=True)
            target = _free_name(folder, os.path.basename(path), ending)
            reserved = target + ending
            with open(reserved, "w", encoding="utf-8", newline="\n") as file:
                file.write(note)
            os.replace(path, target)
            return True
        except OSError as stuck:
            if reserved is not None and os.path.exists(reserved):
                os.remove(reserved)
            self._say_once(path, "waiting  %s cannot be moved to %s: %s" % (path, folder, stuck))
            return False

    def _say_once(self, about, text):
        if self._said.get(about) != text:
            self._said[about] = text
            self.say(text)


def _state(path):
    found = os.stat(path)
    return found.st_size, found.st_mtime_ns


def _free_name(folder, name, ending):
    """A name that neither a file nor a note has, reserved by making the note: spots.csv, spots-2.csv ..."""
    stem, extension = os.path.splitext(name)
    number = 1
    while True:
        target = os.path.join(folder, name if number == 1 else "%s-%d%s" % (stem, number, extension))
        if not os.path.lexists(target):
            try:
                os.close(os.open(target + ending, os.O_CREAT | os.O_EXCL | os.O_WRONLY))
                return target
            except FileExistsError:
                pass
        number += 1


def _arguments(words):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", help="where the workstation puts its tables: a folder per sample")
    parser.add_argument("--url", help="the service; else SURFEIT_URL, else http://127.0.0.1:8420")
    parser.add_argument("--token-file", help="a file that holds the token; else SURFEIT_TOKEN")
    parser.add_argument("--sample", help="the one sample of all tables, which then lie in the folder itself")
    parser.add_argument("--settle", type=float, default=5.0, help="seconds a file must have stayed the same (5)")
    parser.add_argument("--once", action="store_true", help="end when nothing is left to do; with 1 where files wait")
    parser.add_argument("--unit", help="at%% or wt%%, for columns that name none")
    parser.add_argument("--session", help="the session, where the tables name none")
    parser.add_argument("--time-zone", help="the time zone of times without one, e.g. Europe/Berlin")
    return parser.parse_args(words)


def main(words):
    given = _arguments(words)
    token = None
    if given.token_file:
        with open(given.token_file, encoding="utf-8") as file:
            token = file.read().strip()
    options = {"unit": given.unit, "session": given.session, "time_zone": given.time_zone}
    watch = Watch(Lab(given.url, token), given.folder, given.sample, given.settle, options,
                  say=lambda text: print(text, flush=True))
    stop = threading.Event()
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, lambda *_: stop.set())
    while not stop.is_set():
        ended = watch.look()
        if given.once and ended != SETTLING:
            return 0 if ended == NOTHING_LEFT else 1
        stop.wait(watch.wait_s if ended == WAITING else min(FIRST_WAIT_S, max(given.settle / 2, 0.1)))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
