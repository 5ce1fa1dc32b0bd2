package job
import ("testing";"fmt")
func TestX(t *testing.T){ d:=Default(); fmt.Println(Validate(d)); e:=Demo(); fmt.Println(Validate(e)); b,_:=Encode(e); fmt.Println(string(b)); j,err:=Decode(b); fmt.Println(err); _=j
_,err=Decode([]byte(`{"film":{"wet_coat":3,"wet_coat_kg_per_m2":5},"tunnel":{"zones":[{"kind":"x","humidity":{"dew_point_K":300,"wet_bulb_K":4}}]}}`)); fmt.Println(err)}
