/** Drawings to the guides of drive, water and floor. */
import { Area, Arrow, type DrawingProps, Line, Note, Sheet, Size } from "./parts";

export function DriveDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="earth" d="M0 170H56C120 160 180 168 240 140 280 120 320 102 366 98H460V210H0z" />
      <Area of="filled" d="M56 170 290 92 366 90V98C320 102 280 120 240 140 180 168 120 160 56 170z" />
      <Line d="M0 170H56" />
      <Line look="accent" d="M56 170 290 92 366 90" />
      <Area of="thing" d="M366 30h94v60h-94z" />
      <Area of="concrete" d="M366 90h94v8h-94zM366 98h12v52h-12z" />
      <Line look="water" d="M366 90V46" />
      <Note x={414} y={66} anchor="middle">
        door
      </Note>
      <Note x={22} y={160} anchor="middle">
        road
      </Note>
      <Size from={[290, 76]} to={[366, 76]} />
      <Note x={328} y={70} look="accent" anchor="middle">
        landing
      </Note>
      <Size look="soft" from={[56, 190]} to={[290, 190]} />
      <Note x={173} y={204} anchor="middle">
        level distance
      </Note>
      <Size look="soft" from={[300, 92]} to={[300, 170]} />
      <Note x={306} y={150}>
        rise
      </Note>
      <Line look="soft" dashed d="M56 170H300" />
      <Note x={120} y={112} look="accent" anchor="middle">
        grade = rise ÷ level distance
      </Note>
    </Sheet>
  );
}

export function WaterDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="earth" d="M0 40 70 66 96 92h16l60-8V210H0z" />
      <Area of="earth" d="M172 92 460 166V210H172z" />
      <Line look="soft" dashed d="M70 66 460 166" />
      <Area of="filled" d="M290 92 330 98 436 160 290 122z" />
      <Area of="thing" d="M180 26h102v50H180z" />
      <Area of="concrete" d="M172 74h118v6h-118zM172 80h10v52h-10zM280 80h10v66h-10z" />
      <Area of="stone" d="M182 80h98v8h-98z" />
      <Area of="filled" d="M182 88h98v32l-98-25z" />
      <Line d="M0 40 70 66 96 92h16l60-8M290 92 330 98 436 160 460 166" />
      <Line look="water" d="M95 89h20" />
      <Arrow from={[18, 34]} to={[60, 50]} />
      <Arrow from={[160, 76]} to={[124, 80]} />
      <Arrow from={[298, 84]} to={[330, 89]} />
      <Arrow from={[346, 98]} to={[388, 124]} />
      <Note x={104} y={112} look="water" anchor="middle">
        swale
      </Note>
      <Note x={142} y={62} anchor="middle">
        apron
      </Note>
      <Note x={312} y={76} anchor="middle">
        apron
      </Note>
      <Note x={380} y={104}>
        side slope
      </Note>
      <Note x={110} y={24} look="water" anchor="middle">
        the hill's water
      </Note>
      <Note x={320} y={190}>
        ground as it was
      </Note>
      <Line look="soft" d="M340 178 336 136" />
    </Sheet>
  );
}

export function FloorDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="earth" d="M0 76 460 172V210H0z" />
      <Area of="filled" d="M130 92h196v52L130 103z" />
      <Line d="M0 76 460 172" />
      <Area of="concrete" d="M120 84h216v8H120zM120 92h10v60h-10zM326 92h10v90h-10z" />
      <Area of="thing" d="M128 22h200v62H128z" />
      <Line look="accent" d="M60 84H400" />
      <Note x={228} y={60} anchor="middle">
        one level floor
      </Note>
      <Size from={[108, 84]} to={[108, 99]} />
      <Note x={104} y={50} look="accent" anchor="end">
        high corner:
      </Note>
      <Note x={104} y={65} look="accent" anchor="end">
        a little shows
      </Note>
      <Size from={[352, 84]} to={[352, 149]} />
      <Note x={360} y={114} look="accent">
        low corner:
      </Note>
      <Note x={360} y={129} look="accent">
        much shows
      </Note>
      <Note x={254} y={113} anchor="middle">
        fill
      </Note>
      <Arrow look="ink" from={[412, 76]} to={[412, 50]} />
      <Note x={412} y={42} anchor="middle">
        more fill
      </Note>
      <Arrow look="ink" from={[30, 92]} to={[30, 118]} />
      <Note x={12} y={134}>
        water comes in
      </Note>
    </Sheet>
  );
}
