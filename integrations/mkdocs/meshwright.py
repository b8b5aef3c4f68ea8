"""A hook for MkDocs: brings the script to the site, names it once in every page that has a living figure, and checks the
elements of every page as it is made."""

import base64
import difflib
import hashlib
import logging
import re
from pathlib import Path
from urllib.parse import quote

from markdown.extensions import Extension
from mkdocs.structure.files import File

log = logging.getLogger("mkdocs.hooks.meshwright")

# made by `node scripts/integrations.js` from calc's table of attributes
ELEMENTS = {
    "mw-build": "build src json mode permalink notebook seal stages target compare centre motor battery controller mount title wheelbase headline lengths front front-wheel front-motor middle middle-wheel middle-motor rear rear-wheel rear-motor left left-wheel left-motor right right-wheel right-motor drive drive-wheel drive-motor".split(),
    "mw-value": "build figure of with group base scope from measure over unit digits sign drive at".split(),
    "mw-teeth": "build of label min max free".split(),
    "mw-ratio-summary": "build of at".split(),
    "mw-overdrive-gauge": "build of with base scope at".split(),
    "mw-edits": "build sticks".split(),
    "mw-stage-editor": "build".split(),
    "mw-train-drawing": "build of at".split(),
    "mw-drive-line": "build still chosen open at".split(),
    "mw-pair-finder": "build of".split(),
    "mw-train-finder": "build of wheels lead".split(),
    "mw-count-finder": "build of figure output with want".split(),
    "mw-change-table": "build show against".split(),
    "mw-wheel-speed": "build of unit loaded".split(),
    "mw-working": "build of at".split(),
    "mw-order-list": "build from at".split(),
    "mw-parts-list": "build at".split(),
    "mw-bench-card": "build at".split(),
    "mw-quantity": "build of label".split(),
    "mw-measurements": "build of at".split(),
    "mw-unmarked-gear": "build".split(),
    "mw-turn-count": "build of".split(),
}
WORDS = {
    "figure": "reduction fraction standing range count counts direction gap lead farther leader drift taken-up mean travel change centre slot fit shortfall backlash speed motor-rpm wheel-rpm hand-turns volts circle".split(),
    "scope": "tyres gears".split(),
    "drive": "locked straight-on".split(),
    "measure": "sentence arrow heard harmonic arithmetic reduction wheel-speed wheel-torque midpoint travel both from to full nominal held".split(),
    "unit": "mm cm m in ft km/h m/s mph ft/s V".split(),
    "sign": "none".split(),
}
AXLE = r"^axle-[a-z][a-z0-9]*(?:-[a-z0-9]+)*$"
LONGEST = 5000
# end

ON_ANY = re.compile(r"(?:id|class|lang|dir|title|translate|hidden|role|slot|(?:data|aria)-[a-z0-9-]+)$")
INLINE = {"mw-value", "mw-teeth", "mw-quantity"}
TAG = re.compile(r"<(mw-[a-z0-9-]*)((?:\s+[^\s\"'<>/=]+(?:\s*=\s*(?:\"[^\"]*\"|'[^']*'|[^\s\"'=<>`]+))?)*)\s*/?>", re.I)
ATTRIBUTE = re.compile(r"([^\s\"'<>/=]+)(?:\s*=\s*(?:\"([^\"]*)\"|'([^']*)'|([^\s\"'=<>`]+)))?")
SCRIPT = Path(__file__).parent / "script"


class Blocks(Extension):
    """What is a block of ours is none inside a paragraph: a table would be thrown out of it."""

    def extendMarkdown(self, md):
        md.block_level_elements.extend(tag for tag in ELEMENTS if tag not in INLINE)


def nearest(name, known):
    found = difflib.get_close_matches(name.lower(), known, 3)
    return "; the nearest: " + ", ".join(found) if found else ""


def fault(tag, name, value):
    """What is wrong with an attribute; nothing where it may stand."""
    known = ELEMENTS[tag]
    is_axle = tag == "mw-build" and re.match(AXLE, name)
    if not (name in known or is_axle or ON_ANY.match(name)):
        return f"there is no attribute {name}{nearest(name, known)}"
    if name == "src" and re.match(r"\s*(?!https?:)[a-z][a-z0-9+.-]*:", value, re.I):
        return f"src leads to no file of a site: {value[:40]}"
    if len(value) > LONGEST and name != "json":
        return f"{name} has more than {LONGEST} characters"
    if tag == "mw-value" and name in WORDS and value not in WORDS[name]:
        return f"there is no {name} “{value}”{nearest(value, WORDS[name])}"
    return None


def faults(html):
    """What is wrong with the elements of a page."""
    for found in TAG.finditer(html):
        tag = found[1].lower()
        if tag not in ELEMENTS:
            yield f"there is no element <{tag}>{nearest(tag, list(ELEMENTS))}"
            continue
        for name, *values in ATTRIBUTE.findall(found[2]):
            told = fault(tag, name.lower(), "".join(values))
            if told:
                yield f"<{tag}>: {told}"


def on_config(config):
    config["markdown_extensions"].append(Blocks())
    return config


def on_files(files, config):
    if not (SCRIPT / "meshwright.js").exists():
        log.warning("%s is not there: figures stay as they are written", SCRIPT / "meshwright.js")
        return files
    for path in sorted(SCRIPT.glob("*.js")):
        files.append(File(path.name, str(SCRIPT), str(Path(config["site_dir"]) / "meshwright"), False))
    return files


def on_post_page(output, page, config):
    if "<mw-" not in output.lower():
        return output
    for told in faults(page.content or ""):
        log.warning("%s: %s", page.file.src_path, told)
    script = SCRIPT / "meshwright.js"
    if not script.exists():
        return output
    digest = base64.b64encode(hashlib.sha384(script.read_bytes()).digest()).decode()
    depth = page.url.count("/") if config["use_directory_urls"] else page.file.url.count("/")
    source = "../" * depth + "meshwright/meshwright.js?v=" + quote(digest[:8], safe="")
    line = f'<script src="{source}" integrity="sha384-{digest}" defer></script>'
    head, end, tail = output.rpartition("</body>")
    return head + line + end + tail if end else output + line
