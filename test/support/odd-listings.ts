/** A listing in a shape that nobody who wrote the reader had in mind, and what it says as `rendered` says it. */
export interface OddListing {
  readonly what: string;
  readonly text: string;
  readonly says: string;
}

export const oddListings: readonly OddListing[] = [
  {
    what: 'value, ends and default with marks alone',
    text: `
      -- Corvid kernel 3.1, all that is kept
      -- value <low,high> *delivered
      hush.gyro.a      47 <0,250> *45
      hush.gyro.b     120 <0,500> *120
      lean.limit       55 <10,85> *50 deg
      stir.mode      soft <soft,firm,wild> *soft
      sound.on        yes <yes,no> *yes
    `,
    says: `
      hush › gyro › a = 47  (0 to 250; else 45)
      hush › gyro › b = 120  (0 to 500; else 120)
      lean › limit = 55  (10 to 85; else 50; in deg)
      stir › mode = soft  (soft|firm|wild; else soft)
      sound › on = yes  (yes|no; else yes)
    `,
  },
  {
    what: 'boxes that are ticked, beside values',
    text: `
      LANDING
        [x] arm only with throttle low
        [ ] arm while tilted
        [x] buzzer on lost link
        landing rule    hover
      FILTERS
        first cut       180 Hz
        second cut      300 Hz
    `,
    says: `
      LANDING › arm only with throttle low = on
      LANDING › arm while tilted = off
      LANDING › buzzer on lost link = on
      LANDING › landing rule = hover
      FILTERS › first cut = 180  (in Hz)
      FILTERS › second cut = 300  (in Hz)
    `,
  },
  {
    what: 'a star before what was changed',
    text: `
      * changed since delivery
        gyro speed ............ 8000 Hz
      * gyro hush ............. 180 Hz (delivered: 150)
      * stick hush ............ 25 Hz (delivered: 30)
        idle .................. 5.5 %
      * call name ............. Dipper (delivered: none)
        motor poles ........... 14
    `,
    says: `
      gyro speed = 8000  (in Hz)
      gyro hush = 180  (else 150; in Hz)
      stick hush = 25  (else 30; in Hz)
      idle = 5.5  (in %)
      call name = Dipper  (else none)
      motor poles = 14
    `,
  },
  {
    what: 'tables whose first column has no heading',
    text: `
      tuning, thousandths
                     roll   pitch   yaw
        stiff          42      44    31
        hold           70      72    80
        soak           21      23     0

      turning
                     roll   pitch   yaw
        centre         70      70    60
        full          670     670   500
    `,
    says: `
      stiff › roll = 42
      stiff › pitch = 44
      stiff › yaw = 31
      hold › roll = 70
      hold › pitch = 72
      hold › yaw = 80
      soak › roll = 21
      soak › pitch = 23
      soak › yaw = 0
      turning › centre › roll = 70
      turning › centre › pitch = 70
      turning › centre › yaw = 60
      turning › full › roll = 670
      turning › full › pitch = 670
      turning › full › yaw = 500
    `,
  },
  {
    what: 'words behind numbers that say what they are',
    text: `
      Q001:08000 gyro rate
      Q002:00180 gyro low pass 1
      Q003:00300 gyro low pass 2
      Q010:00047 roll p
      Q020:-0012 board yaw offset
    `,
    says: `
      Q001 = 08000  ("gyro rate")
      Q002 = 00180  ("gyro low pass 1")
      Q003 = 00300  ("gyro low pass 2")
      Q010 = 00047  ("roll p")
      Q020 = -0012  ("board yaw offset")
    `,
  },
  {
    what: 'notes behind a column',
    text: `
      ADDR    NAME    VAL   ; note
      0x01A0  GYLP1   00C8  ; gyro low pass 1, Hz
      0x01A2  GYLP2   012C  ; gyro low pass 2, Hz
      0x01A4  IDLE    0226  ; idle, 1/10000
      0x01A6  MGNT    0014  ; magnets
    `,
    says: `
      GYLP1 = 00C8  (in Hz; "gyro low pass 1, Hz")
      GYLP2 = 012C  (in Hz; "gyro low pass 2, Hz")
      IDLE = 0226  ("idle, 1/10000")
      MGNT = 0014  ("magnets")
    `,
  },
  {
    what: 'questions and answers',
    text: `
      How often is the gyro read? 8 kHz
      How far may it lean? 55 deg
      Who calls when the link is lost? buzzer
      Where does the gyro cut? 180 Hz
    `,
    says: `
      How often is the gyro read = 8  (in kHz)
      How far may it lean = 55  (in deg)
      Who calls when the link is lost = buzzer
      Where does the gyro cut = 180  (in Hz)
    `,
  },
  {
    what: 'sentences with a point',
    text: `
      let gyro hush be 180 Hz.
      let idle be 5.5 %.
      let stick order be TAER.
      let buzzer on lost link be yes.
    `,
    says: `
      let gyro hush = 180  (in Hz)
      let idle = 5.5  (in %)
      let stick order = TAER
      let buzzer on lost link = yes
    `,
  },
  {
    what: 'one line with a mark between settings',
    text: 'gyro.rate=8000&gyro.cut1=180&gyro.cut2=300&roll.p=47&order=TAER&name=Dipper%20two',
    says: `
      gyro › rate = 8000
      gyro › cut1 = 180
      gyro › cut2 = 300
      roll › p = 47
      order = TAER
      name = Dipper%20two
    `,
  },
  {
    what: 'headings in two brackets, again and again, and values in one',
    text: `
      title = "Dipper two"
      [gyro]
      rate = 8_000 # Hz
      cuts = [ 180, 300 ]
      [tune.roll]
      p = 0.47
      i = 0.80
      [[switch]]
      name = "arm"
      channel = 5
      [[switch]]
      name = "level"
      channel = 6
    `,
    says: `
      title = "Dipper two"
      gyro › rate = 8_000  (in Hz)
      gyro › cuts = [ 180, 300 ]
      tune.roll › p = 0.47
      tune.roll › i = 0.80
      [switch] › name = "arm"
      [switch] › channel = 5
      [switch] › name (2) = "level"
      [switch] › channel (2) = 6
    `,
  },
  {
    what: 'a drawn tree',
    text: `
      dipper
      ├── gyro
      │   ├── rate: 8000 Hz
      │   └── cut two: 300 Hz
      └── pitch
          ├── p: 49
          └── i: 82
    `,
    says: `
      dipper › gyro › rate = 8000  (in Hz)
      dipper › gyro › cut two = 300  (in Hz)
      dipper › pitch › p = 49
      dipper › pitch › i = 82
    `,
  },
  {
    what: 'a drawn table',
    text: `
      ╔══════════════╦═══════╦══════╗
      ║ name         ║ value ║ unit ║
      ╠══════════════╬═══════╬══════╣
      ║ gyro cut one ║   180 ║ Hz   ║
      ║ idle         ║   5.5 ║ %    ║
      ║ call name    ║ Dipper║      ║
      ╚══════════════╩═══════╩══════╝
    `,
    says: `
      gyro cut one = 180  (in Hz)
      idle = 5.5  (in %)
      call name = Dipper
    `,
  },
  {
    what: 'old values in comments over lines and behind marks',
    text: `
      /* Dipper two, tuned in the hall.
         gyro_cut_1 = 250 was too noisy
      */
      gyro_cut_1 = 180 // Hz; was: 250
      // gyro_cut_2 = 350
      gyro_cut_2 = 300 // Hz
      # old: idle = 4.5
      idle = 5.5 // percent, range 1 to 12
      //idle = 6
      name = "Dipper // two"
    `,
    says: `
      gyro_cut_1 = 180  (in Hz; "Hz; was: 250")
      gyro_cut_2 = 300  (in Hz)
      idle = 5.5  (1 to 12; in percent)
      name = "Dipper // two"
    `,
  },
  {
    what: 'groups in braces within a returned one',
    text: `
      -- tune of the second Dipper
      return {
        gyro = { rate = 8000, cut = { 180, 300 } },
        roll = { p = 47, i = 80, d = 23 },
        -- yaw has no d
        yaw = { p = 31, i = 80 },
        order = "TAER",
        airtime = true,
      }
    `,
    says: `
      return › gyro › rate = 8000
      return › gyro › cut = { 180, 300 }
      return › roll › p = 47
      return › roll › i = 80
      return › roll › d = 23
      return › yaw › p = 31
      return › yaw › i = 80
      return › order = "TAER"
      return › airtime = true
    `,
  },
  {
    what: 'values below their names',
    text: `
      gyro hush:
          180 Hz
      idle:
          5.5 %
      stick order:
          TAER
    `,
    says: `
      gyro hush = 180 Hz
      idle = 5.5 %
      stick order = TAER
    `,
  },
  {
    what: 'an arrow before what may be written',
    text: `
      lull.thr       1175 us   <- 1000 .. 2000, was 1150
      lean.most        55 deg  <- 10 .. 85
      gyro.cut.1      180 Hz   <- 20 .. 500, was 150
      brake.on        yes      <- yes/no
      spin.signal     pulse600 <- pulse300/pulse600/slow
    `,
    says: `
      lull.thr = 1175  (1000 to 2000; in us; "1000 .. 2000, was 1150")
      lean.most = 55  (10 to 85; in deg)
      gyro.cut.1 = 180  (20 to 500; in Hz; "20 .. 500, was 150")
      brake.on = yes  (yes|no)
      spin.signal = pulse600  (pulse300|pulse600|slow)
    `,
  },
  {
    what: 'words of two parts in a column',
    text: `
      switch arm        Aux 1
      switch level      Aux 2
      switch locate     Aux 3
      link lost after   300 ms
    `,
    says: `
      switch arm = Aux 1
      switch level = Aux 2
      switch locate = Aux 3
      link lost after = 300  (in ms)
    `,
  },
  {
    what: 'second readings in brackets',
    text: `
      cut      = 1500 (1.5 kHz)
      idle     = 550 (5.5 %)
      pack.low = 3500 (3.5 V)
      lean     = 55 (0.96 rad)
    `,
    says: `
      cut = 1500  ("1.5 kHz")
      idle = 550  ("5.5 %")
      pack.low = 3500  ("3.5 V")
      lean = 55  ("0.96 rad")
    `,
  },
];
