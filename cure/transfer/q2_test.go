package transfer
import ("testing";"fmt";"math"
"github.com/drywright/drywright/cure/air")
func TestScan(t *testing.T){
 pile:=&Pile{.0008,.93,1.1,.035,.9}
 for _,c:=range [][2]float64{{.2,.4}}{ opposed,liftw:=c[0],c[1]

 for _,L:=range []Law{Buoyant{.3,Vertical},Buoyant{2,Vertical},Buoyant{.1,FacingDown},Buoyant{2,FacingUp},Buoyant{1,FacingDown},Buoyant{4,FacingDown},Buoyant{.3,FacingUp},Buoyant{.3,FacingDown},Buoyant{2,FacingDown}}{
   non:=0; n:=0; worst:=0.; where:=""
  for _,ta:=range []float64{283,293.15,303,333,353,393.15,450,500}{ for _,w:=range []float64{0.001,.007,.02,.1,.3,1}{
   ai,err:=air.FromHumidityRatio(ta,101325,w,true); if err!=nil {continue}
   for _,pl:=range []*Pile{nil,pile}{
   for T:=275.;T<min(ai.T+20,372);T+=2.3{
    s:=Surface{Air:ai,Wall:ai.T,Law:L,Emissivity:.9,Factor:1,Pile:pl}
    p:=s.Prepare(T)
    prev:=math.Inf(-1)
    for x:=.0;x<=1;x+=.02{
      j,_:=p.Flux(x); n++
      if j<prev {non++; if d:=(prev-j)/math.Abs(j); d>worst{worst=d; where=fmt.Sprintf("Ta%.0f w%.3f T%.2f a%.2f pile=%v j%.3g",ta,w,T,x,pl!=nil,j)}}
      prev=j
    }
   }}
  }}
   fmt.Println(opposed,liftw,L,non,n,worst,where)
 }}
}
