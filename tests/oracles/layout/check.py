"""Checks solutions of layout cases, with shapely for the geometry and nothing of the
engine's: check.py CASES_DIR SOLUTIONS_DIR. Fails on the first broken rule."""

import json
import pathlib
import sys
from functools import lru_cache

from shapely import Polygon, box


def main(cases, solutions):
    checked = 0
    for path in sorted(pathlib.Path(cases).glob("*.json")):
        case = json.loads(path.read_text())
        solution = json.loads((pathlib.Path(solutions) / f"{case['id']}.json").read_text())
        problems = list(broken(case, solution))
        if problems:
            sys.exit("\n".join(f"{case['id']}: {problem}" for problem in problems))
        checked += 1
    if not checked:
        sys.exit(f"no cases in {cases}")
    print(f"{checked} layouts keep every rule, says shapely")


def broken(case, solution):
    floor = Polygon(case["outline"], case["holes"])
    pieces = solution["pieces"]
    numbers = sorted({piece["course"] for piece in pieces})
    courses = [[piece for piece in pieces if piece["course"] == number] for number in numbers]
    bands = [sorted({(piece["y0"], piece["y1"]) for piece in course}) for course in courses]
    if numbers != list(range(len(numbers))) or any(len(levels) != 1 for levels in bands):
        yield "courses are not numbered from 0 with one band each"
        return
    bands = [levels[0] for levels in bands]
    yield from broken_bands(case, floor, bands)
    joints = []
    for number, (course, band) in enumerate(zip(courses, bands)):
        of_course = set()
        for problem in broken_course(case, floor, course, band, of_course):
            yield f"course {number}: {problem}"
        joints.append(of_course)
    for lower, upper in zip(joints, joints[1:]):
        near = [(a, b) for a in lower for b in upper if abs(a - b) < case["stagger_joists"]]
        if near:
            yield f"joints on joists {near} of neighbouring courses"
    yield from broken_sheets(case, solution)
    yield from uncovered(case, floor, bands, courses)


def broken_bands(case, floor, bands):
    _, low, _, high = floor.bounds
    if bands[0][0] != low or bands[-1][1] != high:
        yield "the courses do not reach from the lowest to the highest point"
    if any(below[1] + case["gap"] != above[0] for below, above in zip(bands, bands[1:])):
        yield "two courses are not one gap apart"
    widths = [high - low for low, high in bands]
    if any(width != case["sheet"]["width"] for width in widths[1:-1]):
        yield "an inner course is not as wide as a sheet"
    if any(not 0 < width <= case["sheet"]["width"] for width in widths):
        yield "a course is too wide"
    if len(widths) > 1 and min(widths[0], widths[-1]) < case["min_rip"]:
        yield "an end course is too narrow"


def polygons(shape):
    parts = getattr(shape, "geoms", [shape])
    return [part for part in parts if part.geom_type == "Polygon" and part.area > 1e-9]


def stretches(shape):
    """What a shape covers of the x axis, in whole sixteenths outward."""
    joined = []
    for left, right in sorted((part.bounds[0], part.bounds[2]) for part in polygons(shape)):
        if joined and left <= joined[-1][1] + 1e-9:
            joined[-1][1] = max(joined[-1][1], right)
        else:
            joined.append([left, right])
    return [(down(left), up(right)) for left, right in joined]


def down(value):
    return int((value + 1e-6) // 1)


def up(value):
    return -int((-value + 1e-6) // 1)


def broken_course(case, floor, pieces, band, joints):
    low, high = band
    strip = floor.intersection(box(-1e6, low, 1e6, high))
    cells = sorted({(piece["x0"], piece["x1"]) for piece in pieces})
    for left, right in stretches(strip):
        mine = [cell for cell in cells if cell[0] < right and cell[1] > left]
        cells = [cell for cell in cells if cell not in mine]
        if not mine or mine[0][0] != left or mine[-1][1] != right:
            yield f"{left} to {right} is not covered from end to end"
            continue
        yield from broken_run(case, left, right, mine, joints)
        for cell in mine:
            inside = strip.intersection(box(cell[0], low, cell[1], high))
            bounds = [part.bounds for part in polygons(inside)]
            want = sorted((up(x1) - down(x0), up(y1) - down(y0)) for x0, y0, x1, y1 in bounds)
            have = sorted((piece["w"], piece["h"]) for piece in pieces if (piece["x0"], piece["x1"]) == cell)
            if want != have:
                yield f"cell {cell} holds {want}, not {have}"
    if cells:
        yield f"cells off the floor: {cells}"


def broken_run(case, left, right, cells, joints):
    reach = case["joist_width"]
    carriers = [x for x in sorted(case["joists"]) if left + reach <= x <= right - reach]
    for one, other in zip(cells, cells[1:]):
        middle = (one[1] + other[0]) / 2
        if other[0] - one[1] != case["gap"] or middle not in carriers:
            yield f"the joint between {one} and {other} is not centered on a joist"
        else:
            joints.add(sorted(case["joists"]).index(middle))
    for start, end in cells:
        bays = 1 + sum(start < x < end for x in carriers)
        if bays < min(case["min_bays"], len(carriers) + 1):
            yield f"({start}, {end}) spans {bays} bays"
        if end - start > case["sheet"]["length"]:
            yield f"({start}, {end}) is longer than a sheet"


def broken_sheets(case, solution):
    kerf, sheet = case["kerf"], (0, 0, case["sheet"]["length"], case["sheet"]["width"])
    by_sheet = {}
    for piece in solution["pieces"]:
        x, y = piece["sx"], piece["sy"]
        by_sheet.setdefault(piece["sheet"], []).append((x, y, x + piece["w"], y + piece["h"]))
    if sorted(by_sheet) != list(range(solution["sheets"])):
        yield "sheets are not numbered from 0, each used"
    for number, rectangles in by_sheet.items():
        if any(r[0] < 0 or r[1] < 0 or r[2] > sheet[2] or r[3] > sheet[3] for r in rectangles):
            yield f"sheet {number}: a piece lies off it"
        elif not can_be_cut(sheet, tuple(sorted(rectangles)), kerf):
            yield f"sheet {number}: no cuts from edge to edge free the pieces"


@lru_cache(maxsize=None)
def can_be_cut(whole, pieces, kerf):
    """Cuts that take `kerf` also keep pieces apart by as much."""
    if len(pieces) == 1:
        piece = pieces[0]
        return all(piece[at] >= whole[at] for at in (0, 1)) and all(piece[at] <= whole[at] for at in (2, 3))
    for axis in (0, 1):
        for at in {piece[axis + 2] for piece in pieces}:
            before = tuple(piece for piece in pieces if piece[axis + 2] <= at)
            behind = tuple(piece for piece in pieces if piece[axis] >= at + kerf)
            if len(before) + len(behind) < len(pieces) or not before or not behind:
                continue
            first, second = list(whole), list(whole)
            first[axis + 2], second[axis] = at, at + kerf
            if can_be_cut(tuple(first), before, kerf) and can_be_cut(tuple(second), behind, kerf):
                return True
    return False


def uncovered(case, floor, bands, courses):
    """Pieces, seams and joints together are the floor."""
    half = case["gap"] / 2
    area = 0
    for (low, high), pieces in zip(bands, courses):
        for x0, x1 in {(piece["x0"], piece["x1"]) for piece in pieces}:
            area += floor.intersection(box(x0, low, x1, high)).area
        starts = {piece["x0"] for piece in pieces}
        for end in {piece["x1"] for piece in pieces}:
            if end + case["gap"] in starts:
                area += floor.intersection(box(end, low, end + 2 * half, high)).area
    for below, above in zip(bands, bands[1:]):
        area += floor.intersection(box(-1e6, below[1], 1e6, above[0])).area
    if abs(area - floor.area) > 1e-6 * floor.area:
        yield f"pieces and gaps cover {area}, the floor is {floor.area}"


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(sys.argv[1], sys.argv[2])
