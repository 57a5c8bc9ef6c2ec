"""Asks a Surfeit service from Python; the standard library only, Python 3.8 or newer.

    from surfeit import Lab

    lab = Lab("http://127.0.0.1:8420", token="lab_...")     # or SURFEIT_URL and SURFEIT_TOKEN in the environment
    lab.put_sample("lot-7", {"alloy": "ag-cu-eutectic", "beam_energy_kev": 15})
    lab.post_table("lot-7", "my-spots.csv")
    for sentence in lab.segregation("lot-7")["summary"]:
        print(sentence)

A refusal is raised as Refused, with every fault at its place. A request that meets no service raises Away; reading may
then simply be done again, and so may posting with a key (post_table makes one from the sample and the file's content).
Run by the project's own tests.
"""

import gzip
import hashlib
import http.client
import json
import os
import urllib.error
import urllib.parse
import urllib.request

MEDIA_TYPES = {".json": "application/json", ".ndjson": "application/x-ndjson"}
# Answers that say nothing of the request itself: not now, too fast, no room, stopping.
NOT_NOW = (408, 425, 429, 500, 502, 503, 504, 507)
# What a connection that fails or ends too early raises.
BROKEN = (OSError, http.client.HTTPException)


class Away(Exception):
    """The service cannot be reached, or cannot answer at this moment.

    status is that of its answer, None where there was none; retry_after_s is its own word, if it gave one.
    """

    def __init__(self, why, status=None, retry_after_s=None):
        super().__init__(why)
        self.status = status
        self.retry_after_s = retry_after_s


class Refused(Exception):
    """The service has answered no. problem holds its whole answer (RFC 9457), faults one text per fault."""

    def __init__(self, status, problem):
        self.status = status
        self.problem = problem
        self.code = problem.get("code", "")
        self.detail = problem.get("detail", "")
        self.faults = [fault_text(fault) for fault in problem.get("errors", [])]
        super().__init__("%s %s: %s" % (status, self.code, self.detail))


def fault_text(fault):
    """A fault as one line: where, what stood there, what is wrong."""
    place = []
    if "line" in fault:
        place.append("line %s" % fault["line"])
    if "column" in fault:
        place.append("column %s" % fault["column"])
    if "column_name" in fault:
        place.append("(%s)" % fault["column_name"])
    if "pointer" in fault:
        place.append(fault["pointer"])
    if "value" in fault:
        place.append('"%s"' % fault["value"])
    return "%s: %s [%s]" % (" ".join(place) or "the whole upload", fault.get("detail", ""), fault.get("code", ""))


class Lab:
    """One service. Not bound to a connection; may be shared by threads."""

    def __init__(self, url=None, token=None, timeout_s=60):
        self.url = (url or os.environ.get("SURFEIT_URL") or "http://127.0.0.1:8420").rstrip("/")
        self.token = token or os.environ.get("SURFEIT_TOKEN")
        self.timeout_s = timeout_s

    # Samples and spots

    def samples(self, **filters):
        """Every sample, page by page; filters alloy and q."""
        return self._pages("/v1/samples", filters)

    def sample(self, name):
        """A sample as it is described now."""
        return self._json("GET", _path("samples", name))

    def put_sample(self, name, description, revision=None):
        """Gives a sample its description; changing one on record needs the revision the change starts from."""
        headers = {} if revision is None else {"If-Match": '"%d"' % revision}
        return self._json("PUT", _path("samples", name), body=description, headers=headers)

    def post_spots(self, sample, spots, key=None, **options):
        """Records spots: a document {"unit": ..., "spots": [...]}; options session, on_error, validate_only ..."""
        return self._json("POST", _path("samples", sample, "spots") + _query(options), body=spots,
                          headers={} if key is None else {"Idempotency-Key": key})

    def post_table(self, sample, file, key=None, **options):
        """Records a file as the workstation exported it, once, however often; returns the import report."""
        with open(file, "rb") as table:
            return self.post_bytes(sample, table.read(), os.path.basename(file), key=key, **options)

    def post_bytes(self, sample, content, name, key=None, **options):
        """As post_table, for the content of a file of that name."""
        media_type = MEDIA_TYPES.get(os.path.splitext(name)[1].lower(), "text/csv")
        headers = {
            "Content-Type": media_type,
            "Content-Encoding": "gzip",
            "Content-Disposition": "attachment; filename=\"%s\"" % _plain(name),
            "Idempotency-Key": key or content_key(sample, content),
        }
        address = _path("samples", sample, "spots") + _query(options)
        return json.loads(self._send("POST", address, gzip.compress(content), headers))

    def spots(self, sample, **filters):
        """Every spot of a sample; filters feature, particle, session, verdict."""
        return self._pages(_path("samples", sample, "spots"), filters)

    # Answers

    def segregation(self, sample, by="feature"):
        """What the spots of a sample show."""
        return self._json("GET", _path("samples", sample, "segregation") + _query({"by": by}))

    def report(self, sample, form="md", by="feature"):
        """The same as a text: md or csv."""
        return self._text(_path("samples", sample, "segregation") + "." + form + _query({"by": by}))

    def interpret(self, sample, spots, unit="at%", by="feature"):
        """What spots show that are not on record: sample and spots as in the JSON of the service; nothing is stored."""
        return self._json("POST", "/v1/interpretations" + _query({"by": by}),
                          body={"sample": sample, "unit": unit, "spots": spots})

    def compare(self, a, b, **options):
        """Two samples against each other; option same_particles."""
        return self._json("GET", "/v1/comparisons" + _query(dict(options, a=a, b=b)))

    def freeze(self, sample, by="feature", key=None):
        """Keeps today's answer for ever."""
        return json.loads(self._send("POST", _path("samples", sample, "interpretations") + _query({"by": by}), b"",
                                     {} if key is None else {"Idempotency-Key": key}))

    def frozen(self, interpretation):
        """An answer that was frozen, by its id; its key stale says whether an input changed since."""
        return self._json("GET", _path("interpretations", interpretation))

    def plan(self, question):
        """How much to measure."""
        return self._json("POST", "/v1/plans", body=question)

    def results(self, **filters):
        """Every result as a flat dict, one per spot and element; filters sample, element, verdict, from_, to."""
        address = "/v1/results.ndjson" + _query({name.rstrip("_"): value for name, value in filters.items()})
        with self._open("GET", address, None, {}) as answer:
            for line in self._lines(answer):
                yield json.loads(line)

    def _lines(self, answer):
        while True:
            try:
                line = answer.readline()
            except BROKEN as broken:
                raise Away("The answer of %s broke off: %s" % (self.url, broken)) from broken
            if not line:
                return
            yield line

    # The wire

    def _pages(self, path, filters):
        cursor = None
        while True:
            page = self._json("GET", path + _query(dict(filters, cursor=cursor)))
            yield from page["items"]
            cursor = page["next"]
            if cursor is None:
                return

    def _json(self, method, address, body=None, headers=None):
        headers = dict(headers or {}, Accept="application/json")
        data = None
        if body is not None:
            data = json.dumps(body).encode("utf-8")
            headers["Content-Type"] = "application/json"
        return json.loads(self._send(method, address, data, headers))

    def _text(self, address):
        return self._send("GET", address, None, {}).decode("utf-8")

    def _send(self, method, address, data, headers):
        with self._open(method, address, data, headers) as answer:
            try:
                return answer.read()
            except BROKEN as broken:
                raise Away("The answer of %s broke off: %s" % (self.url, broken)) from broken

    def _open(self, method, address, data, headers):
        request = urllib.request.Request(self.url + address, data=data, headers=headers, method=method)
        if self.token:
            request.add_header("Authorization", "Bearer " + self.token)
        try:
            return urllib.request.urlopen(request, timeout=self.timeout_s)
        except urllib.error.HTTPError as refusal:
            raise self._refusal(refusal) from None
        except BROKEN as broken:  # URLError is one of them
            raise Away("No answer from %s: %s" % (self.url, getattr(broken, "reason", broken))) from broken

    @staticmethod
    def _refusal(answer):
        with answer:
            try:
                problem = json.loads(answer.read())
            except (ValueError, OSError):
                problem = {"detail": answer.reason}
        refused = Refused(answer.code, problem)
        if answer.code not in NOT_NOW:
            return refused
        seconds = answer.headers.get("Retry-After", "")
        return Away(str(refused), answer.code, int(seconds) if seconds.isdigit() else None)


def content_key(sample, content):
    """The Idempotency-Key of a file for a sample: the same content makes the same key."""
    return "file-" + hashlib.sha256(sample.encode("utf-8") + b"\0" + content).hexdigest()


def _path(*steps):
    return "/v1/" + "/".join(urllib.parse.quote(step, safe="") for step in steps)


def _query(options):
    given = {name: _word(value) for name, value in options.items() if value is not None}
    return "?" + urllib.parse.urlencode(given) if given else ""


def _word(value):
    return str(value).lower() if isinstance(value, bool) else value


def _plain(name):
    return "".join(c if c.isascii() and (c.isalnum() or c in " ._-()") else "_" for c in name)
