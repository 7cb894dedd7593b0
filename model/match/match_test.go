package match_test

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/model/match"
)

func side(rig string, n int, size string) match.Side {
	return match.Side{Rig: rig, Family: "crib", N: n, Size: size}
}

func read(pairs ...[2]int) func(int, int) bool {
	return func(s, x int) bool { return slices.Contains(pairs, [2]int{s, x}) }
}

func TestACheapestWayIsProposedOnlyWhereItIsTheOnlyOne(t *testing.T) {
	for name, c := range map[string]struct {
		short, extra []match.Side
		known        match.Known
		want         string
	}{
		"one fits": {[]match.Side{side("A", 4, "")}, []match.Side{side("B", 4, "")}, match.Known{},
			"4 for 8, 0 open: 0-0 4..4 at 2 clear"},
		"more there than is short": {[]match.Side{side("A", 2, "")}, []match.Side{side("B", 5, "")}, match.Known{},
			"2 for 4, 0 open: 0-0 2..2 at 2 clear"},
		"fewer there": {[]match.Side{side("A", 5, "")}, []match.Side{side("B", 2, "")}, match.Known{},
			"2 for 4, 3 open: 0-0 2..2 at 2 clear"},
		"two fit as well": {[]match.Side{side("A", 4, "")}, []match.Side{side("B", 4, ""), side("C", 4, "")}, match.Known{},
			"4 for 8, 0 open: 0-0 0..4 at 2 tie; 0-1 0..4 at 2 tie"},
		"a mark was read on one": {[]match.Side{side("A", 4, "")}, []match.Side{side("B", 4, ""), side("C", 4, "")}, match.Known{MarkRead: read([2]int{0, 1})},
			"4 for 0, 0 open: 0-1 4..4 at 0 clear"},
		"one was at the same place": {[]match.Side{side("A", 4, "")}, []match.Side{side("B", 4, ""), side("C", 4, "")}, match.Known{SamePlace: read([2]int{0, 0})},
			"4 for 4, 0 open: 0-0 4..4 at 1 clear"},
		"another size is the last choice": {[]match.Side{side("A", 4, "4x4")}, []match.Side{side("B", 4, "6x6"), side("C", 4, "4x4"), side("D", 1, "")}, match.Known{},
			"4 for 8, 0 open: 0-1 3..4 at 2 tie; 0-2 0..1 at 2 tie"},
		"another size where there is nothing else": {[]match.Side{side("A", 1, "4x4")}, []match.Side{side("B", 1, "6x6")}, match.Known{},
			"1 for 5, 0 open: 0-0 1..1 at 5 clear"},
		"the same rig explains nothing": {[]match.Side{side("A", 4, "")}, []match.Side{side("A", 4, "")}, match.Known{}, ""},
		"another family":                {[]match.Side{side("A", 4, "")}, []match.Side{{Rig: "B", Family: "wedge", N: 4}}, match.Known{}, ""},
		"no family":                     {[]match.Side{{Rig: "A", N: 4}}, []match.Side{{Rig: "B", N: 4}}, match.Known{}, ""},
		"the cheap one is needed elsewhere": {[]match.Side{side("A", 1, ""), side("B", 1, "")}, []match.Side{side("C", 1, ""), side("A", 1, "")},
			match.Known{SamePlace: read([2]int{0, 0})}, "2 for 3, 0 open: 0-0 1..1 at 1 clear; 1-1 1..1 at 2 clear"},
	} {
		got := ""
		for _, m := range match.Find(c.short, c.extra, c.known) {
			got += fmt.Sprintf("%d for %d, %d open:", m.N, m.Cost, m.Short)
			for i, p := range m.Pairs {
				word := map[bool]string{true: "clear", false: "tie"}[p.Clear()]
				got += fmt.Sprintf("%s %d-%d %d..%d at %d %s", map[bool]string{true: ";"}[i > 0], p.Short, p.Extra, p.Least, p.Most, p.Cost, word)
			}
		}
		if got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, c.want)
		}
	}
}

// brute tries every way to give pieces to pairs.
type brute struct {
	short, extra []match.Side
	cost         [][]int // -1: cannot be
	n, least     int
	low, high    [][]int
}

func (b *brute) try(i, j, n, c int, now [][]int) {
	if i == len(b.short) {
		switch {
		case n > b.n || n == b.n && c < b.least:
			b.n, b.least = n, c
			b.low, b.high = copied(now), copied(now)
		case n == b.n && c == b.least:
			for i := range now {
				for j, k := range now[i] {
					b.low[i][j], b.high[i][j] = min(b.low[i][j], k), max(b.high[i][j], k)
				}
			}
		}
		return
	}
	if j == len(b.extra) {
		b.try(i+1, 0, n, c, now)
		return
	}
	most := min(b.short[i].N, b.extra[j].N)
	if b.cost[i][j] < 0 {
		most = 0
	}
	for k := range most + 1 {
		now[i][j] = k
		b.short[i].N, b.extra[j].N = b.short[i].N-k, b.extra[j].N-k
		b.try(i, j+1, n+k, c+k*max(0, b.cost[i][j]), now)
		b.short[i].N, b.extra[j].N = b.short[i].N+k, b.extra[j].N+k
	}
	now[i][j] = 0
}

func copied(x [][]int) (out [][]int) {
	for _, r := range x {
		out = append(out, slices.Clone(r))
	}
	return out
}

func TestTheMatchIsWhatTryingEveryWayGives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sides := func(what string) (out []match.Side) {
			for range rapid.IntRange(1, 3).Draw(t, what) {
				out = append(out, side(rapid.SampledFrom([]string{"A", "B", "C"}).Draw(t, "rig"), rapid.IntRange(1, 3).Draw(t, "n"),
					rapid.SampledFrom([]string{"", "4x4", "6x6"}).Draw(t, "size")))
			}
			return out
		}
		b := &brute{short: sides("short"), extra: sides("extra"), n: -1}
		marks, spots := map[[2]int]bool{}, map[[2]int]bool{}
		var now [][]int
		for i, s := range b.short {
			now = append(now, make([]int, len(b.extra)))
			b.cost = append(b.cost, nil)
			for j, x := range b.extra {
				p := [2]int{i, j}
				marks[p], spots[p] = rapid.IntRange(0, 3).Draw(t, "mark") == 0, rapid.IntRange(0, 2).Draw(t, "spot") == 0
				c := 2
				if spots[p] {
					c = 1
				}
				if marks[p] {
					c = 0
				}
				if s.Size != "" && x.Size != "" && s.Size != x.Size {
					c += 3
				}
				if s.Rig == x.Rig {
					c = -1
				}
				b.cost[i] = append(b.cost[i], c)
			}
		}
		b.try(0, 0, 0, 0, now)
		got := match.Find(b.short, b.extra, match.Known{
			MarkRead:  func(s, x int) bool { return marks[[2]int{s, x}] },
			SamePlace: func(s, x int) bool { return spots[[2]int{s, x}] }})
		if b.n == 0 {
			if len(got) != 0 {
				t.Fatalf("%+v, and nothing fits", got)
			}
			return
		}
		if len(got) != 1 || got[0].N != b.n || got[0].Cost != b.least {
			t.Fatalf("%+v, want %d pieces for %d", got, b.n, b.least)
		}
		for _, p := range got[0].Pairs {
			if p.Least != b.low[p.Short][p.Extra] || p.Most != b.high[p.Short][p.Extra] || p.Most == 0 {
				t.Fatalf("%+v, want %d to %d", p, b.low[p.Short][p.Extra], b.high[p.Short][p.Extra])
			}
			b.high[p.Short][p.Extra] = 0
		}
		for i := range b.high {
			for j, k := range b.high[i] {
				if k > 0 {
					t.Fatalf("%d-%d fits as well and is not shown", i, j)
				}
			}
		}
	})
}

func TestTheSizeIsReadOffTheName(t *testing.T) {
	for name, want := range map[string]string{"Crib block 4x4x20": "4x4x20", "Wedge 4X4": "4x4", "Box": "", "Axe x": "", "Hose 1 3/4 in": "", "x4": ""} {
		if got := match.Size(name); got != want {
			t.Errorf("%q of %q, want %q", got, name, want)
		}
	}
}

// yard is three rigs with blocks of one family, and pegs without a family.
func yard() *model.State {
	item := func(id, name, rig, family string) model.Item {
		return model.Item{ID: id, Name: name, Rig: rig, Kind: model.Counted, Quantity: 10, Family: family, LeastUsable: model.Blank}
	}
	return model.NewState((&model.Department{
		Rigs: []model.Rig{{ID: "A1"}, {ID: "B2"}, {ID: "C3"}},
		Items: []model.Item{item("A1-1", "Block 4x4", "A1", "crib"), item("B2-1", "Block 4x4", "B2", "crib"), item("C3-1", "Block 4x4", "C3", "crib"),
			item("A1-2", "Peg", "A1", ""), item("B2-2", "Peg", "B2", "")},
	}).Index())
}

func count(t *testing.T, s *model.State, item string, n int) *model.State {
	t.Helper()
	e := &model.Entry{Act: model.Act{Verb: model.Count, Item: item, Quantity: n}, Seen: s.Seen()}
	e.Stamp = model.Stamp{Wall: int64(s.Folded() + 1), Device: "A"}
	next := judge.Judge(s, e)
	if !e.Taken() {
		t.Fatalf("count of %s refused: %s", item, e.Reply.Text)
	}
	return next
}

func TestShortHereAndExtraThereAreReadOffTheCounts(t *testing.T) {
	s := count(t, count(t, yard(), "A1-1", 6), "A1-2", 2)
	if _, _, got := match.Of(s, nil); len(got) != 0 {
		t.Errorf("a match before anybody counted extra: %+v", got)
	}
	s = count(t, count(t, s, "B2-1", 14), "B2-2", 18)
	short, extra, got := match.Of(s, nil)
	if len(got) != 1 || len(got[0].Pairs) != 1 || !got[0].Pairs[0].Clear() || got[0].Pairs[0].Most != 4 {
		t.Fatalf("%+v, want one clear swap of 4", got)
	}
	if p := got[0].Pairs[0]; s.Dept.Items[short[p.Short].Line].ID != "A1-1" || s.Dept.Items[extra[p.Extra].Line].ID != "B2-1" {
		t.Errorf("%+v of %+v and %+v", p, short, extra)
	}
	s = count(t, s, "C3-1", 14)
	if _, _, got := match.Of(s, nil); len(got[0].Pairs) != 2 || got[0].Pairs[0].Clear() {
		t.Errorf("%+v, want two and no proposal", got)
	}
	_, _, got = match.Of(s, func(short, extra []match.Side) match.Known {
		return match.Known{MarkRead: func(_, x int) bool { return extra[x].Rig == "C3" }}
	})
	if len(got[0].Pairs) != 1 || !got[0].Pairs[0].Clear() || extra[0].Rig != "B2" {
		t.Errorf("%+v, want the rig whose mark was read", got)
	}
}

func FuzzNoMatchIsTooStrange(f *testing.F) {
	f.Add(4, 1<<62, -3, "A", "B", "4x4")
	f.Fuzz(func(t *testing.T, a, b, c int, r1, r2, size string) {
		short := []match.Side{side(r1, a, size), side(r2, b, match.Size(size))}
		extra := []match.Side{side(r2, c, ""), side("Z", a, size)}
		for _, m := range match.Find(short, extra, match.Known{}) {
			if m.N <= 0 || m.Cost < 0 || m.Short < 0 {
				t.Fatalf("%+v", m)
			}
		}
	})
}
