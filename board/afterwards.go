package board

import (
	"slices"
	"strings"
	"time"

	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/model/tarpsheet"
)

// paperDevice begins the name under which a sheet of paper stands in the log.
const paperDevice = "paper-"

// FromPaper tells whether a device is a sheet of paper that was entered.
func FromPaper(device string) bool { return strings.HasPrefix(device, paperDevice) }

// EnterPaper logs the lines of a tarp sheet that was written while there was
// no tablet, in the scene that is on, each in its minute. A sheet is like a
// tablet that was cut off: it had seen what was logged up to its first minute,
// and its own lines. So what contradicts the log is a claim beside it, and
// nothing that was logged is changed. With dry, or if a line cannot be read,
// nothing is logged; the entries have the replies all the same.
func (b *Board) EnterPaper(lines []tarpsheet.Line, by string, dry bool) ([]model.Entry, []tarpsheet.Fault, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	p, now := b.Picture(), b.opts.Now()
	scene := p.State.Scene(p.Scene)
	start := time.UnixMilli(scene.Opened).In(now.Location())
	if scene.ID == "" {
		return nil, []tarpsheet.Fault{{Wrong: "no scene is open", Right: "a scene opened first, with the time at which it began"}}, nil
	}
	written, faults := tarpsheet.Read(p.State.Dept, start, now, lines)
	if len(faults) > 0 || len(written) == 0 {
		return nil, faults, nil
	}
	w, err := b.paperWriter(written, scene.ID, by)
	if err != nil {
		return nil, nil, err
	}
	entries, err := w.entries(written)
	if err != nil || dry {
		return entries, nil, err
	}
	_, err = b.add(entries)
	return entries, nil, err
}

// A paperWriter judges lines of paper among the entries of the log.
type paperWriter struct {
	b         *Board
	scene, by string
	device    string
	rest      []*model.Entry // of the log, that come after what all holds
	all       *model.State   // the log up to the line, and the lines before
	known     *model.State   // what the paper's writer knew
	seen      model.Vector
	clock     model.Stamp
}

// lastOf is the last millisecond of a minute: a tap of the same minute may
// have come before the line was written.
func lastOf(minute time.Time) int64 {
	return minute.Truncate(time.Minute).Add(time.Minute).UnixMilli() - 1
}

func (b *Board) paperWriter(written []tarpsheet.Written, scene, by string) (*paperWriter, error) {
	var log []model.Entry
	for e, err := range b.ledger.Entries(0) {
		if err != nil {
			return nil, err
		}
		log = append(log, e)
	}
	w := &paperWriter{b: b, scene: scene, by: by, device: paperDevice + strings.TrimPrefix(b.newDevice(), "t-"),
		all: model.NewState(new(model.Department).Index()), known: model.NewState(new(model.Department).Index())}
	w.clock.Device = w.device
	first := lastOf(written[0].Time)
	for _, l := range written {
		first = min(first, lastOf(l.Time))
	}
	sorted := model.Sorted(inOrder(model.Vector{}, log))
	n := before(sorted, scene, first)
	for _, e := range sorted[:n] {
		w.all.Apply(e)
		w.known.Apply(e)
		w.clock = heard(w.clock, e.Stamp)
	}
	w.rest, w.seen = sorted[n:], w.known.Seen()
	return w, nil
}

// before is how many entries were logged by a moment. The stamps tell; where
// even the scene's opening was stamped later, as in a scene that was replayed
// from a file, the times that were given do.
func before(sorted []*model.Entry, scene string, moment int64) int {
	replayed := slices.ContainsFunc(sorted, func(e *model.Entry) bool {
		return e.Verb == model.Open && e.Scene == scene && e.Stamp.Wall > moment
	})
	for n := len(sorted); n > 0; n-- {
		if e := sorted[n-1]; e.Stamp.Wall <= moment || replayed && e.At() <= moment {
			return n
		}
	}
	return 0
}

// entries judges the lines, the earliest first.
func (w *paperWriter) entries(written []tarpsheet.Written) ([]model.Entry, error) {
	out := make([]model.Entry, 0, len(written))
	for _, l := range tarpsheet.ByTime(written) {
		w.clock = w.clock.Tick(lastOf(l.Time))
		for len(w.rest) > 0 && w.rest[0].Stamp.Compare(w.clock) < 0 {
			w.all.Apply(w.rest[0])
			w.rest = w.rest[1:]
		}
		e := model.Entry{Act: l.Act(w.known, w.scene, w.by), Scene: w.scene, Stamp: w.clock, Device: w.device, Seen: w.seen.Clone(),
			Typed: l.Time.UnixMilli(), Entered: w.b.opts.Now().UnixMilli(), Format: model.Format}
		var err error
		if e.ID, err = w.b.id(w.clock.Wall); err != nil {
			return nil, err
		}
		w.all = judge.Judge(w.all, &e)
		w.known.Apply(&e)
		w.seen[w.device] = e.N()
		out = append(out, e)
	}
	return out, nil
}
