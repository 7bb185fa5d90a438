"""Judges the answers that the program beside this file writes, by networkx, another graph library in another language.

Reads a line of JSON for each family. From what the family says it works out which joints are open, what lets on what, how far the
debris goes, where it goes round, what it must pass, which clean looks a find disproves and what would stop it, and compares. Prints every disagreement and a line of counts;
ends with 1 where anything disagrees or nothing was read. An optional argument says how many families there must be.
"""

import collections
import json
import sys

import networkx as nx
from networkx.algorithms.flow import shortest_augmenting_path

UNLIMITED = float("inf")
ROOT = "root"
counts = collections.Counter()


def size(value):
    return UNLIMITED if value is None else value


def reached_from(graph, sources):
    """The sources and all that has a way from one."""
    marked = set(sources)
    for source in sources:
        marked |= nx.descendants(graph, source)
    return marked


class Question:
    """One family and one debris, with what follows from their words."""

    def __init__(self, case, answer):
        self.case, self.debris = case, answer["debris"]
        self.has_size, self.is_hard = answer["hasSize"], answer["isHard"]
        self.parts = case["parts"]
        self.failed = set(case["failed"])
        of_debris = [one for one in case["findings"] if one["debris"] == self.debris]
        self.found = {one["part"] for one in of_debris if one["found"]}
        self.sources = self.failed | self.found
        self.open = [
            number for number, joint in enumerate(case["joints"])
            if joint["when"] & case["states"] and (joint["onlyIfFailed"] is None or joint["onlyIfFailed"] in self.failed)
        ]
        self.graph = nx.DiGraph()
        self.graph.add_nodes_from(range(len(self.parts)))
        for joint in (case["joints"][number] for number in self.open):
            # Of joints side by side the widest counts.
            width = size(joint["passage"]) if self.has_size and self.is_hard else UNLIMITED
            before = self.graph.get_edge_data(joint["from"], joint["to"], {"width": -1})
            self.graph.add_edge(joint["from"], joint["to"], width=max(width, before["width"]))
        clean = {one["part"] for one in of_debris if not one["found"] and one["part"] not in self.failed and self.parts[one["part"]]["shows"] == "Good"}
        self.void = self.disproved(clean, [one for one in of_debris if one["found"]])
        self.accepted = clean - self.void - self.sources if case["acceptsCleanFindings"] else set()

    def disproved(self, clean, finds):
        """The clean places on a walk from a failed part to a find that no walk past a place that lets nothing on explains."""
        free, past_clean, void = self.from_failures(set()), self.from_failures(clean), set()
        for find in finds:
            part, said = find["part"], find["size"] if self.has_size else None
            if part not in free:
                continue
            if part not in past_clean or past_clean[part] < free[part] and (said is None or said > past_clean[part]):
                void |= {place for place in clean & set(free) if place == part or nx.has_path(self.graph, place, part)}
        return void

    def from_failures(self, shut):
        """For every part that a walk from a failed part leads to, past none of the shut ones, how much the widest such walk carries."""
        open_ways = nx.DiGraph(self.graph)
        open_ways.remove_edges_from([edge for edge in self.graph.edges if edge[0] in shut])
        width = {(u, v): min(UNLIMITED if u in self.failed else self.rating(u), data["width"]) for u, v, data in open_ways.edges(data=True)}
        carried = {}
        for source in self.failed:
            shed = size(self.parts[source]["sheds"].get(self.debris)) if self.has_size else UNLIMITED
            for level in sorted({0, shed, *width.values()}, reverse=True):
                ways = nx.DiGraph(edge for edge in width if width[edge] >= level)
                ways.add_node(source)
                for part in reached_from(ways, [source]):
                    carried[part] = max(carried.get(part, 0), min(level, shed))
        return carried

    def lets_on(self, part, accepted):
        if part in self.sources:
            return UNLIMITED
        return 0 if part in accepted else self.rating(part)

    def rating(self, part):
        said, width = self.parts[part], UNLIMITED
        if said["absolute"] and not said["bypass"] and self.debris in said["holds"]:
            width = size(said["holds"][self.debris])
        if self.has_size and self.is_hard:
            width = min(width, size(said["passage"]))
        return width

    def sheds(self, source):
        """The largest particle that comes from a source: what was found has no known upper size."""
        if source in self.found or not self.has_size:
            return UNLIMITED
        return size(self.parts[source]["sheds"].get(self.debris))

    def world(self, accepted):
        """For every listed part its grade and reach, with these clean findings counted."""
        width = {(u, v): min(self.lets_on(u, accepted), data["width"]) for u, v, data in self.graph.edges(data=True)}
        passing = {}

        def at_least(least):
            if least not in passing:
                passing[least] = nx.DiGraph()
                passing[least].add_nodes_from(self.graph)
                passing[least].add_edges_from(edge for edge in width if width[edge] >= least)
            return passing[least]

        reach = {}
        for level in sorted({0, *width.values(), *map(self.sheds, self.sources)}, reverse=True):
            for part in reached_from(at_least(level), [one for one in self.sources if self.sheds(one) >= level]):
                reach.setdefault(part, level)
        # A failed part where the debris was found too also sheds what it sheds by itself, and that may arrive whole where the other does not.
        full = set()
        for source in self.sources:
            own = {UNLIMITED} if source in self.found else set()
            if source in self.failed:
                own.add(size(self.parts[source]["sheds"].get(self.debris)) if self.has_size else UNLIMITED)
            for shed in own:
                full |= reached_from(at_least(shed), [source])
        past = nx.DiGraph(self.graph)
        past.remove_edges_from([edge for edge in self.graph.edges if edge[0] in accepted])
        dirty = reached_from(past, self.sources)
        return {
            part: ("Cleared" if accepted and (part in accepted or part not in dirty) else "Exposed" if part in full else "Guarded", reach[part])
            for part in reach
        }

    def listed(self):
        plain = self.world(set())
        counting = self.world(self.accepted) if self.accepted else plain
        fewest = nx.multi_source_dijkstra_path_length(self.graph, self.sources, weight=lambda _, to, __: int(to in self.accepted)) if self.sources else {}
        needed = {"OneLook": 0, "TwoLooks": 2, "Nothing": UNLIMITED}
        return {part: (counting if fewest[part] >= needed[self.parts[part]["clearedBy"]] else plain)[part] for part in plain}

    def dominators(self):
        rooted = nx.DiGraph(self.graph)
        rooted.add_node(ROOT)
        rooted.add_edges_from((ROOT, source) for source in self.sources)
        immediate = nx.immediate_dominators(rooted, ROOT)
        return [-1 if immediate.get(part, ROOT) == ROOT else immediate[part] for part in range(len(self.parts))]

    def cut(self, target):
        """The smallest set of parts nearest to the sources that every way to the target meets, joints straight from a source left out."""
        halves = nx.DiGraph()
        halves.add_nodes_from([ROOT, (target, "in")])
        for part in self.graph:
            if part in self.sources:
                halves.add_edge(ROOT, (part, "out"))
            elif part != target:
                halves.add_edge((part, "in"), (part, "out"), capacity=1)
        for before, after in self.graph.edges:
            if not (before in self.sources and after == target) and before != target and after not in self.sources:
                halves.add_edge((before, "out"), (after, "in"))
        # This library gives the cut nearest to where the flow ends, so it is asked the other way round.
        _, (_, near) = nx.minimum_cut(halves.reverse(), (target, "in"), ROOT, flow_func=shortest_augmenting_path)
        return [part for part in self.graph if (part, "in") in near and (part, "out") not in near and part != target and part not in self.sources]


def numbered_by_first(sets, count):
    """Components numbered from 0 by their lowest part, for every part its number."""
    of = {part: number for number, members in enumerate(sorted(sets, key=min)) for part in members}
    return [of[part] for part in range(count)]


def of_grade(grade, *answers):
    """How many the judge finds of this grade, and for each answer those of this grade with their reach."""
    chosen = [{part: reach for part, (is_of, reach) in sorted(answer.items()) if is_of == grade} for answer in answers]
    return len(chosen[-1]), *chosen


def judge(case, answer):
    """Yields what is compared: a name, how many answers it holds, ours and theirs."""
    question = Question(case, answer)
    yield "open joints", len(question.open), answer["open"], question.open
    yield "sources", len(question.sources), sorted(answer["sources"]), sorted(question.sources)
    yield "void clean looks", len(question.void), answer["void"], sorted(question.void)
    ours = {one["part"]: (one["grade"], size(one["reach"])) for one in answer["listed"]}
    theirs = question.listed()
    yield "listed parts", len(theirs), [one["part"] for one in answer["listed"]], sorted(theirs)
    for grade in ("Exposed", "Guarded", "Cleared"):
        yield f"{grade.lower()} with their reach", *of_grade(grade, ours, theirs)
    components = list(nx.strongly_connected_components(question.graph))
    yield "loops", sum(len(one) > 1 for one in components), answer["components"], numbered_by_first(components, len(question.parts))
    dominators = question.dominators()
    yield "dominators", sum(one >= 0 for one in dominators), answer["dominators"], dominators
    for cut in answer["cuts"]:
        part = cut["part"]
        is_joined = any(question.graph.has_edge(source, part) for source in question.sources)
        yield "cuts", 1, (part, cut["isJoinedToSource"], cut["cut"]), (part, is_joined, question.cut(part))
        yield "last single parts", 1, (part, cut["lastSinglePart"]), (part, dominators[part])


def main():
    disagreements = 0
    for line in sys.stdin:
        case = json.loads(line)
        counts["families"] += 1
        for answer in case["answers"]:
            counts["questions"] += 1
            for name, held, ours, theirs in judge(case, answer):
                counts[name] += held
                if ours != theirs:
                    disagreements += 1
                    print(f"seed {case['seed']}, {answer['debris']}: {name} disagree\n  ours   {ours}\n  theirs {theirs}")
    print(", ".join(f"{number} {name}" for name, number in counts.items()) + f": {disagreements} disagreements")
    expected = int(sys.argv[1]) if len(sys.argv) > 1 else counts["families"]
    return 0 if disagreements == 0 and counts["families"] == expected > 0 else 1


if __name__ == "__main__":
    sys.exit(main())
