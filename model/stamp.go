package model

import (
	"cmp"
	"maps"
	"slices"
)

// A Stamp is a hybrid logical clock reading: wall milliseconds, a counter for
// acts within one millisecond, and the device. Stamps order the log.
//
// Source of the rules: Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical
// Physical Clocks", OPODIS 2014 (from memory).
type Stamp struct {
	Wall   int64  `json:"w"`
	Count  int    `json:"c,omitempty"`
	Device string `json:"d"`
}

// Compare orders stamps by wall time, counter, device.
func (s Stamp) Compare(t Stamp) int {
	return cmp.Or(cmp.Compare(s.Wall, t.Wall), cmp.Compare(s.Count, t.Count), cmp.Compare(s.Device, t.Device))
}

// Tick is the stamp of an act made when the wall clock shows now.
func (s Stamp) Tick(now int64) Stamp {
	if now > s.Wall {
		return Stamp{now, 0, s.Device}
	}
	return Stamp{s.Wall, s.Count + 1, s.Device}
}

// Receive is the clock after an entry stamped m came in while the wall clock
// shows now.
func (s Stamp) Receive(m Stamp, now int64) Stamp {
	wall := max(s.Wall, m.Wall, now)
	count := 0
	switch {
	case wall == s.Wall && wall == m.Wall:
		count = max(s.Count, m.Count) + 1
	case wall == s.Wall:
		count = s.Count + 1
	case wall == m.Wall:
		count = m.Count + 1
	}
	return Stamp{wall, count, s.Device}
}

// FarAhead is how far a clock may be ahead, in milliseconds, before its
// entries are marked and no longer pull other clocks along.
const FarAhead = 5 * 60 * 1000

// A Vector says how many entries of each device its writer had.
type Vector map[string]int

// Covers tells whether the n-th entry of the device was known.
func (v Vector) Covers(device string, n int) bool { return v[device] >= n }

// Clone copies the vector.
func (v Vector) Clone() Vector {
	if v == nil {
		return Vector{}
	}
	return maps.Clone(v)
}

// Sorted puts entries in the order in which they are folded: by stamp, but
// each after all that its writer had seen. With clocks that agree the second
// rule changes nothing; a clock far ahead cannot bend it. The order depends
// on the set alone, not on how the entries arrived.
func Sorted(entries []Entry) []*Entry {
	out := make([]*Entry, len(entries))
	for i := range entries {
		out[i] = &entries[i]
	}
	slices.SortFunc(out, func(a, b *Entry) int { return a.Stamp.Compare(b.Stamp) })
	out = slices.CompactFunc(out, func(a, b *Entry) bool { return a.ID == b.ID })
	if causal(out) {
		return out
	}
	return topological(out)
}

// causal tells whether every entry stands after all those present that it saw.
func causal(entries []*Entry) bool {
	first := Vector{} // of each device, the lowest number among the entries behind
	for _, e := range slices.Backward(entries) {
		for d, n := range e.Seen {
			if f, behind := first[d]; behind && f <= n {
				return false
			}
		}
		d, n := e.Stamp.Device, e.N()
		if f, behind := first[d]; !behind || n < f {
			first[d] = n
		}
	}
	return true
}

// topological takes, again and again, the earliest entry whose writer had
// seen nothing that is still to come.
func topological(entries []*Entry) []*Entry {
	waiting := map[string][]*Entry{}
	for _, e := range entries {
		waiting[e.Stamp.Device] = append(waiting[e.Stamp.Device], e)
	}
	var devices []string
	for d, q := range waiting {
		devices = append(devices, d)
		slices.SortStableFunc(q, func(a, b *Entry) int { return cmp.Compare(a.N(), b.N()) })
	}
	slices.Sort(devices)
	ready := func(e *Entry) bool {
		for d, n := range e.Seen {
			if q := waiting[d]; d != e.Stamp.Device && len(q) > 0 && q[0].N() <= n {
				return false
			}
		}
		return true
	}
	out := make([]*Entry, 0, len(entries))
	for len(out) < len(entries) {
		var next *Entry
		for _, d := range devices {
			if q := waiting[d]; len(q) > 0 && ready(q[0]) && (next == nil || q[0].Stamp.Compare(next.Stamp) < 0) {
				next = q[0]
			}
		}
		if next == nil { // vectors that contradict each other: keep the order of the stamps
			return entries
		}
		waiting[next.Stamp.Device] = waiting[next.Stamp.Device][1:]
		out = append(out, next)
	}
	return out
}
