package board_test
import ("testing";"fmt";"time";"database/sql";"runtime")
func TestZZ(t *testing.T){
 db,_:=sql.Open("sqlite","/tmp/big.db"); r,err:=db.Exec("DELETE FROM balance"); fmt.Println(r,err); db.Close()
 x:=newTablet(t,"A"); x.shut(t); x.path="/tmp/big.db"; x.clock.now=evening.AddDate(12,0,0)
 s:=time.Now(); x.open(t); fmt.Println("whole open", time.Since(s), len(x.Picture().Entries))
 runtime.GC(); var m runtime.MemStats; runtime.ReadMemStats(&m); fmt.Println("after", m.HeapAlloc>>20, "MB; sys", m.Sys>>20)
 s=time.Now(); x.sound(t); fmt.Println("verify", time.Since(s))
 runtime.ReadMemStats(&m); fmt.Println("sys", m.Sys>>20)
}
