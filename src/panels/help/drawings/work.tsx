/** Drawings to the guides of foundation, quantities, set-out and sheets. */
import { Area, Arrow, type DrawingProps, Laser, Line, Note, Rod, Sheet, Size } from "./parts";

export function FoundationDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="earth" d="M0 66 128 74 146 176H138V196H222V176H214V112L460 118V210H0z" />
      <Area of="filled" d="M206 62H460V118L214 112V176H206z" />
      <Area of="stone" d="M206 50H460V62H206z" />
      <Area of="concrete" d="M206 36H460V50H206zM176 36h30V176H176zM150 176h82v20H150z" />
      <Line d="M0 66 128 74 146 176" />
      <Line look="soft" dashed d="M0 150H140" />
      <Note x={8} y={164}>
        frost depth
      </Note>
      <Size from={[164, 36]} to={[164, 176]} />
      <Note x={159} y={116} look="accent" anchor="end">
        wall
      </Note>
      <Line look="accent" d="M110 36H176" />
      <Note x={104} y={40} look="accent" anchor="end">
        top of wall
      </Note>
      <Size from={[244, 176]} to={[244, 196]} />
      <Note x={252} y={191}>
        footing
      </Note>
      <Line look="accent" d="M100 196H150" />
      <Note x={94} y={200} anchor="end">
        bottom of trench
      </Note>
      <Note x={330} y={30} anchor="middle">
        slab
      </Note>
      <Note x={330} y={102} anchor="middle">
        compacted fill, in lifts
      </Note>
      <Note x={330} y={150} anchor="middle">
        undisturbed ground
      </Note>
      <Note x={376} y={78}>
        base stone
      </Note>
    </Sheet>
  );
}

export function QuantitiesDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="earth" d="M0 110H26V170H106V110H132V190H0z" />
      <Line d="M0 110H26V170H106V110H132" />
      <Line look="cut" dashed d="M26 110h80" />
      <Note x={66} y={145} look="cut" anchor="middle">
        1 in the bank
      </Note>
      <Arrow look="ink" from={[128, 84]} to={[168, 84]} />
      <Note x={148} y={74} anchor="middle">
        × swell
      </Note>
      <Area of="earth" d="M178 118c10-30 22-44 50-44s40 14 52 44z" />
      <Line d="M172 88v30h112V88M172 118h150v-34h-24l-6 34" />
      <Line d="M196 128m-9 0a9 9 0 1 0 18 0a9 9 0 1 0-18 0M222 128m-9 0a9 9 0 1 0 18 0a9 9 0 1 0-18 0M306 128m-9 0a9 9 0 1 0 18 0a9 9 0 1 0-18 0" />
      <Note x={230} y={106} anchor="middle">
        1.25 loose
      </Note>
      <Note x={238} y={162} look="soft" anchor="middle">
        loads are counted here
      </Note>
      <Arrow look="ink" from={[330, 84]} to={[370, 84]} />
      <Note x={352} y={74} anchor="middle">
        roll it
      </Note>
      <Area of="earth" d="M340 170H460V190H340z" />
      <Area of="filled" d="M362 116h80v54h-80z" />
      <Line look="fill" d="M362 134h80M362 152h80M362 116h80v54h-80z" />
      <Note x={402} y={108} look="fill" anchor="middle">
        0.9 in place
      </Note>
      <Note x={402} y={204} look="soft" anchor="middle">
        bank × shrink
      </Note>
      <Line look="ink" d="M340 170H460" />
    </Sheet>
  );
}

export function SetoutDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="earth" d="M0 116 200 132 262 140V186H330V146L460 160V210H0z" />
      <Line d="M0 116 200 132 262 140V186H330V146L460 160" />
      <Line look="accent" dashed d="M30 44H440" />
      <Laser x={150} beam={44} foot={128} />
      <Rod x={52} beam={44} foot={108} />
      <Area of="stone" d="M40 108h26l4 10-36-3z" />
      <Note x={20} y={146}>
        the mark
      </Note>
      <Size from={[40, 44]} to={[40, 108]} />
      <Note x={72} y={82} look="accent">
        read
      </Note>
      <Note x={72} y={97} look="accent">
        first
      </Note>
      <Rod x={294} beam={44} foot={186} />
      <Size from={[282, 44]} to={[282, 186]} />
      <Note x={274} y={98} look="accent" anchor="end">
        look for this
      </Note>
      <Note x={306} y={204} anchor="middle">
        bottom of trench
      </Note>
      <Line d="M372 170V92M416 174V92M364 98h60" />
      <Line look="water" d="M394 98V84" />
      <Line look="water" dashed d="M394 98 300 112" />
      <Note x={394} y={76} anchor="middle">
        batter board
      </Note>
      <Note x={240} y={18} anchor="middle">
        reading = today's beam − height wanted
      </Note>
    </Sheet>
  );
}

export function SheetsDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="thing" d="M80 12H380V198H80z" />
      <Line look="soft" d="M90 22H370V188H90z" />
      <Line
        look="soft"
        dashed
        d="M106 60C150 52 190 66 260 46M106 92C160 82 200 98 276 74M106 124c60-12 110 4 176-24M106 152c60-10 110 2 176-24"
      />
      <Line d="M160 70h62v40h-62z" />
      <Line look="cut" d="M224 104 276 150" />
      <Arrow look="ink" from={[342, 66]} to={[342, 36]} />
      <Note x={342} y={80} anchor="middle">
        N
      </Note>
      <Line d="M106 172h80M106 168v8M126 168v8M146 168v8M166 168v8M186 168v8" />
      <Area of="stone" d="M290 140h80v48h-80z" />
      <Line look="soft" d="M290 140h80v48h-80zM290 156h80M290 172h80" />
      <Note x={74} y={176} anchor="end" look="accent">
        scale bar
      </Note>
      <Line look="accent" d="M78 172h20" />
      <Note x={388} y={168} look="accent">
        title block
      </Note>
      <Line look="accent" d="M372 164h12" />
      <Note x={74} y={94} anchor="end" look="accent">
        the plan
      </Note>
      <Line look="accent" d="M78 90h76" />
      <Note x={388} y={52} look="accent">
        north
      </Note>
      <Line look="accent" d="M350 48h34" />
    </Sheet>
  );
}
