package ledger

import (
	"database/sql"
	"encoding/json"
	"errors"

	"tarpside/model"
)

// A Balance is a fold that is kept so as not to be done again: of the first
// Covers entries in the order of arrival, the latest of them stamped Stamp.
// Blob is the caller's own.
type Balance struct {
	Key    string
	Covers int
	Stamp  model.Stamp
	Vector model.Vector
	Blob   []byte
}

// PutBalance keeps the balance, in place of one with the same key.
func (l *Ledger) PutBalance(b Balance) error {
	if err := l.writable(); err != nil {
		return err
	}
	vector, err := json.Marshal(b.Vector.Clone())
	if err != nil {
		return err
	}
	if b.Blob == nil {
		b.Blob = []byte{} // NULL otherwise
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	latest := l.balance
	err = l.transact(func(tx *sql.Tx) error {
		_, err := tx.Exec(`INSERT OR REPLACE INTO balance (key, covers, wall, count, device, vector, blob)
			VALUES (?, ?, ?, ?, ?, ?, ?)`,
			b.Key, b.Covers, b.Stamp.Wall, b.Stamp.Count, b.Stamp.Device, string(vector), b.Blob)
		if err == nil {
			latest, err = latestStamp(tx)
		}
		return err
	})
	if err == nil {
		l.balance = latest
	}
	return trouble(l.path, err)
}

const balanceColumns = "SELECT key, covers, wall, count, device, vector, blob FROM balance "

// LatestBalance is the balance with the latest stamp; ok is false where there
// is none.
func (l *Ledger) LatestBalance() (b Balance, ok bool, err error) {
	return l.balanceOf(l.read.QueryRow(balanceColumns + "ORDER BY wall DESC, count DESC, device DESC LIMIT 1"))
}

// BalanceOf is the balance kept under the key; ok is false where there is none.
func (l *Ledger) BalanceOf(key string) (b Balance, ok bool, err error) {
	return l.balanceOf(l.read.QueryRow(balanceColumns+"WHERE key = ?", key))
}

func (l *Ledger) balanceOf(row *sql.Row) (b Balance, ok bool, err error) {
	var vector string
	err = row.Scan(&b.Key, &b.Covers, &b.Stamp.Wall, &b.Stamp.Count, &b.Stamp.Device, &vector, &b.Blob)
	if errors.Is(err, sql.ErrNoRows) {
		return Balance{}, false, nil
	}
	if err == nil {
		b.Vector, err = decodeVector(vector)
	}
	return b, err == nil, trouble(l.path, err)
}

// DropBalancesAfter drops the balances stamped at or after the stamp. What
// [Ledger.Append] takes in does this by itself.
func (l *Ledger) DropBalancesAfter(s model.Stamp) error {
	if err := l.writable(); err != nil {
		return err
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	latest := l.balance
	err := l.transact(func(tx *sql.Tx) (err error) {
		latest, err = dropBalances(tx, s)
		return err
	})
	if err == nil {
		l.balance = latest
	}
	return trouble(l.path, err)
}

// dropBalances drops those stamped at or after s and returns the latest left.
func dropBalances(tx *sql.Tx, s model.Stamp) (model.Stamp, error) {
	_, err := tx.Exec("DELETE FROM balance WHERE (wall, count, device) >= (?, ?, ?)", s.Wall, s.Count, s.Device)
	if err != nil {
		return model.Stamp{}, err
	}
	return latestStamp(tx)
}

// latestStamp is that of the latest balance; the zero stamp where there is none.
func latestStamp(q querier) (s model.Stamp, err error) {
	err = q.QueryRow("SELECT wall, count, device FROM balance ORDER BY wall DESC, count DESC, device DESC LIMIT 1").
		Scan(&s.Wall, &s.Count, &s.Device)
	if errors.Is(err, sql.ErrNoRows) {
		err = nil
	}
	return s, err
}
