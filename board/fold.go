package board

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"math"
	"math/bits"
	"slices"
	"strconv"

	"tarpside/board/ledger"
	"tarpside/model"
)

// folded is what the file holds: the fold of a balance and the entries since.
type folded struct {
	state   *model.State
	since   []model.Entry // in the order of the fold
	waiting int
	clock   model.Stamp
	whole   bool // folded without a balance
}

// refold reads the file and puts up what it holds.
func (b *Board) refold() error {
	f, err := b.fold()
	if err != nil {
		return err
	}
	b.clock = f.clock
	if f.whole {
		b.keepBalance(f.state, f.waiting)
	}
	was := b.Picture()
	b.publish(Picture{State: f.state, Scene: sceneOn(f.state, was.State, was.Scene), Entries: recent(f.state, f.since), Waiting: f.waiting})
	return nil
}

// recent leaves out what lies before the scenes that the board still lists.
func recent(s *model.State, entries []model.Entry) []model.Entry {
	listed := func(e model.Entry) bool {
		return slices.ContainsFunc(s.Scenes(), func(sc *model.Scene) bool { return sc.ID == e.Scene })
	}
	switch i := slices.IndexFunc(entries, listed); i {
	case 0:
		return entries
	case -1:
		return nil
	default:
		return slices.Clone(entries[i:])
	}
}

// fold starts from the latest balance that still holds. One that does not is
// dropped, so that it is not tried again. Balances are a cache: if none can be
// read, the fold starts from the first entry.
func (b *Board) fold() (folded, error) {
	for {
		balance, ok, err := b.ledger.LatestBalance()
		if !ok || err != nil {
			break
		}
		if f, ok, err := foldFrom(b.ledger, &balance, all, b.clock); ok || err != nil {
			return f, err
		}
		if b.ledger.DropBalancesAfter(balance.Stamp) != nil {
			break
		}
	}
	f, _, err := foldFrom(b.ledger, nil, all, b.clock)
	f.whole = true
	return f, err
}

// all is the number of an entry that no log reaches.
const all = math.MaxInt

// foldFrom folds the entries since a balance, or with nil from the first, up
// to the last-th in the order of arrival. It answers false if
// the balance cannot be read, or if the entries since do not all follow it.
func foldFrom(l *ledger.Ledger, balance *ledger.Balance, last int, clock model.Stamp) (f folded, ok bool, err error) {
	f.state, f.clock = model.NewState(new(model.Department).Index()), clock
	covers := 0
	if balance != nil {
		if f.state, ok = opened(*balance); !ok {
			return f, false, nil
		}
		covers, f.clock = balance.Covers, heard(clock, balance.Stamp)
	}
	base := f.state.Seen()
	for e, err := range l.Entries(covers) {
		if err != nil {
			return f, false, err
		}
		if covers+len(f.since) == last {
			break
		}
		if balance != nil && !follows(&e, base) {
			return f, false, nil
		}
		if !e.Ahead || e.Stamp.Device == clock.Device { // a clock far ahead does not pull this one along
			f.clock = heard(f.clock, e.Stamp)
		}
		f.since = append(f.since, e)
	}
	n := len(f.since)
	f.since = inOrder(base, f.since)
	f.waiting = n - len(f.since)
	for i := range f.since {
		f.state.Apply(&f.since[i])
	}
	return f, true, nil
}

// follows tells whether an entry may be folded on top of a balance: its writer
// had seen all that is in it.
func follows(e *model.Entry, balance model.Vector) bool {
	for device, n := range balance {
		if !e.Seen.Covers(device, n) {
			return false
		}
	}
	return true
}

// inOrder puts entries in the order of the fold and leaves out those that came
// in before an earlier one of their device: the fold's version vector must
// not say that an entry is there which is not.
func inOrder(base model.Vector, entries []model.Entry) []model.Entry {
	numbers := map[string][]int{}
	for i := range entries {
		d := entries[i].Stamp.Device
		numbers[d] = append(numbers[d], entries[i].N())
	}
	whole := base.Clone()
	for d, list := range numbers {
		slices.Sort(list)
		for _, n := range list {
			if n == whole[d]+1 {
				whole[d] = n
			}
		}
	}
	entries = slices.DeleteFunc(entries, func(e model.Entry) bool { return !whole.Covers(e.Stamp.Device, e.N()) })
	sorted := model.Sorted(entries)
	for i := range sorted {
		if sorted[i] != &entries[i] {
			out := make([]model.Entry, len(sorted))
			for j, e := range sorted {
				out[j] = *e
			}
			return out
		}
	}
	return entries
}

// heard is the clock past a stamp that was made here or came in.
func heard(clock, s model.Stamp) model.Stamp {
	if s.Wall > clock.Wall || s.Wall == clock.Wall && s.Count > clock.Count {
		clock.Wall, clock.Count = s.Wall, s.Count
	}
	return clock
}

// keepBalance stores the fold once no scene is open, so that the next start
// need not fold what lies behind. It is a cache: without it the start is
// slower, so a failure is no trouble of the act that was logged. Some older
// ones stay, ever fewer the further back, for a tablet that was cut off and
// comes back with entries which the latest did not know.
func (b *Board) keepBalance(s *model.State, waiting int) {
	open := slices.ContainsFunc(s.Scenes(), func(sc *model.Scene) bool { return !sc.Closed })
	if open || waiting > 0 {
		return
	}
	blob, err := s.MarshalBalance()
	if err != nil {
		return
	}
	n, err := b.ledger.Count()
	if err != nil || n == 0 {
		return
	}
	_ = b.ledger.PutBalance(sealed(ledger.Balance{Key: balanceKey(n), Covers: n, Stamp: b.clock, Vector: s.Seen(), Blob: blob}))
}

// seal is the SHA-256 of a balance. One that was damaged is as good as none.
func seal(b ledger.Balance, blob []byte) []byte {
	h := sha256.New()
	fmt.Fprintln(h, b.Covers, b.Stamp)
	h.Write(blob)
	return h.Sum(nil)
}

// sealed puts the seal before a balance, and opened takes it off; it answers
// false if the seal is broken or the form is not of this version.
func sealed(b ledger.Balance) ledger.Balance {
	b.Blob = append(seal(b, b.Blob), b.Blob...)
	return b
}

func opened(b ledger.Balance) (*model.State, bool) {
	if len(b.Blob) < sha256.Size || !bytes.Equal(b.Blob[:sha256.Size], seal(b, b.Blob[sha256.Size:])) {
		return nil, false
	}
	return model.RestoreBalance(b.Blob[sha256.Size:])
}

// balanceKey names the place of a balance of n entries: in every stretch of
// 256, 512, 1024 ... entries one is kept until the next stretch has its own.
func balanceKey(n int) string { return strconv.Itoa(bits.TrailingZeros(uint(n / 256))) }

// same tells whether two folds are alike in all that a balance keeps.
func same(a, b *model.State) bool {
	x, err := a.MarshalBalance()
	y, err2 := b.MarshalBalance()
	return err == nil && err2 == nil && bytes.Equal(x, y)
}
