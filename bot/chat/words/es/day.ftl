day-ready-hello = Buenos días, **{ $name }**.
day-ready-lesson = La lección nueva de hoy: **{ $lesson }**.
day-ready-lesson-part = La lección de hoy: **{ $lesson }**, día { $sitting } de { $sittings }.
day-ready-light = Hoy no hay lección nueva. Es el día ligero de la semana.
day-ready-review-only = Qué bien que estés de vuelta. Hoy no hay lección nueva, solo cosas que ya conoces.
day-ready-gentle = Qué bien que estés de vuelta. Empezamos con calma: unas pocas cosas que sabías bien, y basta.
day-ready-small = Hoy es un día corto: sin lección, unos pocos ejercicios de repaso, y ya está.
day-ready-test = Hoy toca una prueba sobre lecciones anteriores. No hay reloj, y puede hacerse en dos veces. La abre una persona mayor.
day-ready-second-look = Hoy hay una segunda mirada a la última prueba, con números nuevos. Sin reloj. La abre un adulto.
day-ready-test-open = La prueba está abierta. Sin reloj y sin pistas; puedes cambiar una respuesta hasta que entregues.
day-ready-off-season = Unas pocas cosas para que no se olviden. Diez minutos, no más.
day-ready-missed = Lo de hoy no se pudo enviar a tiempo. Fue culpa nuestra.
day-ready-size = { $review ->
    [0] Unos { $minutes } minutos.
    [one] Un calentamiento y un ejercicio de repaso. Unos { $minutes } minutos.
   *[other] Un calentamiento y { $review } ejercicios de repaso. Unos { $minutes } minutos.
  }
day-ready-late = Esto llegó tarde, y fue culpa nuestra. Haz lo que quepa.
day-ready-unfinished = { $count ->
    [one] Queda abierto un ejercicio de la última vez, por si te apetece.
   *[other] Quedan abiertos { $count } ejercicios de la última vez, por si te apetecen.
  }
day-ready-small-offer = Los dos últimos días quedaron sin terminar. Si hoy parece largo, hazlo corto.
button-start = Empezar
button-small-day = Día corto
button-finish-last = Primero lo de la última vez
button-speaking = Habla { $name }
button-back = Devolver el teléfono

phone-for-student = El día de { $name } está listo. Cuando { $name } tenga el teléfono, pulsa el botón.
who-reads = Hola, **{ $name }**. Cada día de clase te traigo un poco de matemáticas y miro tus respuestas al momento.
    
    Quién lee qué: { $tutor }, que te enseña, ve tus respuestas y las fotos que envías. { $parents } recibe por la tarde un mensaje corto sobre cómo fue. Nadie más ve nada.
    
    Aquí no puedes romper nada. Un fallo es solo un sitio donde mirar otra vez.
who-reads-no-parents = Tu familia
facts-sheet = **Cálculo básico.** Envía las { $count } respuestas en un solo mensaje, en este orden. Escribe un guion para la que dejes.
facts-first = Valen espacios o líneas nuevas entre las respuestas: *12 7 30 …*
facts-timed = Tu ritmo se calcula después. No hay reloj que mirar.
facts-unclear = { $got ->
    [one] Encontré una respuesta, y la hoja tiene { $wanted }.
   *[other] Encontré { $got } respuestas, y la hoja tiene { $wanted }.
  } Envíalas todas otra vez, por favor; un guion vale por la que dejes.
facts-unclear-none = La hoja espera { $wanted } respuestas en un mensaje; un guion vale por la que dejes. *no sé* deja la hoja.
facts-done-all = Las { $out_of } bien.
facts-done = { $right } de { $out_of } bien.
facts-missed = Para mirar otra vez: { $facts }
facts-pace = { $rate } bien por minuto.
facts-usual = Lo tuyo de siempre es { $usual }.
copy-ten = Solo esta vez: copia estos diez números y envíalos. Así sé cuánto tardas en escribir y puedo descontarlo. Sin prisa.
copy-again = No eran del todo los diez números. Cópialos otra vez, por favor.
copied = Gracias. Desde ahora se descuenta el tiempo de escribir.
button-leave = Dejar esto
card-part = Día { $sitting } de { $sittings }
card-looked-up = De la lección **{ $title }**
card-video = La página de tu tutor sobre esto
worked-title = **Ejemplo resuelto**
button-go = Vamos a probar
button-back-to-item = Volver a mi pregunta
button-card = Lección: { $title }
part-warm-up = Calentamiento
part-guided = **Pruébalo { $place } de { $out_of }**
part-review = **{ $place } de { $out_of }**
part-test = **Prueba { $place } de { $out_of }**
part-hands-on = **{ $place } de { $out_of }**
part-known = **{ $place } de { $out_of }**
part-extra = **Extra { $place } de { $out_of }**
from-lesson = de *{ $lesson }*
calculator = Con calculadora
comeback = Uno nuevo de los que se escaparon.
asked-again = Aquí está otra vez.
unit-wanted = Responde en { $unit }.
walk-together = Este lo andamos juntos. Pulsa **Paso siguiente** cuando quieras, o responde directamente.
button-next-step = Paso siguiente
button-hint = Pista
button-later = Más tarde
button-about = Sobre este
button-in-words = El dibujo en palabras
button-try-again = Otra vez
button-ask-tutor = Preguntar a mi tutor
button-show = Enséñame
button-idk = No sé
button-go-on = Seguir
button-enough = Basta por hoy
button-paper = En papel
set-done = { $done } de { $out_of } hechos.
set-done-half = { $done } de { $out_of } hechos. ¿Sigues, o lo dejas por hoy?
day-done-all = Lo de hoy está hecho: { $first } de { $out_of } a la primera.
day-done-more = { $first } de { $out_of } a la primera, { $later } en otro intento.
day-done-none = Lo de hoy está hecho.
day-done-enough = Basta por hoy, entonces. { $first } de { $out_of } a la primera hasta aquí. Lo que no llegaste a ver no es un fallo.
day-done-comes-back = { $count ->
    [one] Uno vuelve pronto como ejercicio nuevo.
   *[other] { $count } vuelven pronto como ejercicios nuevos.
  }
day-done-still-open = { $count ->
    [one] Queda uno abierto, por si te apetece.
   *[other] Quedan { $count } abiertos, por si te apetecen.
  }
day-done-puzzle = Lo que dejaste del calentamiento sigue abierto hasta la tarde.
day-done-task = Ya están todas tus respuestas de *{ $title }*.
day-done-hands-on = Hay algo para hacer con las manos, si quieres: *{ $title }*
day-done-second = Fue bien y queda tiempo. Si quieres: *{ $title }*.
day-done-thanks = Hasta la próxima.
button-take-up = Seguir a pesar de todo
button-known = Esto ya lo sé
button-more = Diez más, por favor
button-hands-on = Enséñame qué hay que hacer
button-second = Otra lección
button-answers = { $count ->
    [one] Enviar la respuesta
   *[other] Enviar las respuestas
  }
extra-done = { $right } de { $out_of } de los que pediste. Todo ayuda, y nada cuenta en tu contra.
nothing-to-practise = Todavía no hay nada que practicar. Llega con las primeras lecciones.
nothing-to-practise-near = Esa lección aún no la conozco. Entre otras, ya viste { $titles }.
hands-on-safety = **Primero:** { $safety }
hands-on-needs = Necesitas: { $things }.
paper-sheet = **En papel.** Hazlos en el orden que quieras. Después envía las respuestas con su número, varias en un mensaje: *3) 1/2  4) -7*
paper-sheet-more = El resto de la hoja:
paper-choices = ({ $choices })
paper-graded = Así han quedado:
paper-right = { $n }) bien
paper-form = { $n }) la cantidad está bien, se pide otra forma: { $how }
paper-unit = { $n }) el número está bien; ¿qué unidad?
paper-wrong = { $n }) todavía no
paper-over = { $n }) lo miramos juntos
paper-unreadable = { $n }) este no lo pude leer
paper-help = { $n }) hay una pista en su botón
paper-already = Hechos antes: { $numbers }
paper-unknown = No están en la hoja de hoy: { $numbers }
paper-left = Faltan: { $numbers }
paper-left-none = Era el último.
paper-number-please = ¿De qué número es eso? Escríbelo delante, como en *3) 1/2*. Faltan: { $numbers }
button-number = Número { $n }
nothing-done = Ahora no hay nada abierto. Lo de hoy está hecho.
nothing-day-off = Hoy no hay clase.
nothing-day-off-next = Hoy no hay clase. El próximo día de clase es el { $day }.
nothing-paused = Ahora las clases están en pausa. Tu tutor las reanuda.
nothing-no-consent = Primero tiene que dar permiso tu padre o tu madre, enviando /agree (en un teléfono compartido, antes /back). Después empezamos.
nothing-not-yet = Tu primer día aún no ha llegado. Llega la mañana del próximo día de clase.
nothing-not-started = Lo de hoy te espera. Pulsa **Empezar** cuando quieras.
nothing-night = Es de noche. El día se abre por la mañana.
nothing-test-waits = Hoy hay prueba. Pide a una persona mayor que la abra.
small-day = { $count ->
    [one] Día corto, entonces: sin lección, un ejercicio de repaso.
   *[other] Día corto, entonces: sin lección, { $count } ejercicios de repaso.
  }
break-taken = Descansa. No corre ningún reloj, y te guardo el sitio.
small-day-already = Hoy ya es corto, o ya está hecho.
reminder = { $name }, lo de hoy sigue esperando, unos { $minutes } minutos. Un día corto también cuenta.
finish-first = { $count ->
    [one] Queda abierto un ejercicio de la última vez.
   *[other] Quedan abiertos { $count } ejercicios de la última vez.
  }
button-finish = Terminar esos
button-start-today = Empezar hoy
who-speaks = ¿Quién habla?
who-speaks-words = Eso parece una respuesta. ¿Quién habla?
button-nobody = Soy yo, una persona mayor
speaking = Hola, **{ $name }**. Ahora el teléfono es tuyo.
given-back = El teléfono vuelve a { $name }.
given-back-by-itself = Hace un rato que nadie dice nada, así que el teléfono cuenta como devuelto a { $name }.
lead-right = ✓ Bien.
lead-right-2 = ✓ Sí.
lead-right-3 = ✓ Eso es.
lead-right-later = ✓ Sí, ahora sí.
lead-right-later-2 = ✓ Bien. El cambio que hiciste lo arregló.
lead-put-off = Queda para el final.
lead-left = Dejado por ahora.
lead-known = Los cinco. Entonces esa lección queda atrás; sus ejercicios siguen en el repaso.
lead-not-known = Bueno es saberlo. Entonces hacemos la lección juntos.
lead-noted = Anotado.
read-as = He leído { $read }.
button-open-test = La abre una persona mayor
button-test-back = Atrás
button-test-next = Siguiente
button-hand-in = Entregar
button-test-list = Lista de respuestas
test-intro = **{ $title }** para { $name } tiene { $items } ejercicios sobre lecciones de hace una semana o más. No hay reloj, y puede hacerse en dos veces. Esta vez no hay pistas; una respuesta puede cambiarse hasta entregar. Lo que aún no esté firme vuelve sin más como práctica.
test-intro-second = **{ $title }**, una segunda mirada para { $name }: { $items } ejercicios con números nuevos sobre lo que aún no se asienta. No hay reloj. Esta vez sin pistas; una respuesta se puede cambiar hasta entregar.
test-reopened = Tu prueba está abierta otra vez, { $name }. Todas tus respuestas están como estaban; cambia lo que quieras y luego entrega.
test-reopened-closed = Tu prueba del { $day } está abierta otra vez, { $name }. Todas tus respuestas están como estaban; cambia lo que quieras y luego entrega. Sin prisa: hasta entonces vale como valía.
test-again = { $name } ha entregado otra vez la prueba del { $day }: ahora { $right } de { $out_of }; antes { $was }.
test-again-shared = { $name } ha entregado otra vez la prueba del { $day }. El resultado nuevo, para los mayores:
test-late = { $name } ha entregado la prueba del { $day } después del mensaje de aquella noche: { $right } de { $out_of }.
test-late-shared = { $name } ha entregado la prueba del { $day } después del mensaje de aquella noche. El resultado, para los mayores:
test-opened = La prueba está abierta. Cuando { $name } tenga el teléfono: **Empezar**.
test-noted = { $left ->
    [0] Anotado. Era el último.
    [one] Anotado. Falta uno.
   *[other] Anotado. Faltan { $left }.
  }
test-list = Tus respuestas hasta ahora. Pulsa una para cambiarla, o entrega.
test-list-blank = { $blank ->
    [one] Una aún no tiene respuesta.
   *[other] { $blank } aún no tienen respuesta.
  }
test-retype = Entregado. Antes de contar: { $count ->
    [one] una respuesta hay que escribirla
   *[other] { $count } respuestas hay que escribirlas
  } otra vez, por su forma, por su unidad o porque no la pude leer.
test-retype-row = { $n }) { $why }
test-retype-form = se pide otra forma
test-retype-unit = la unidad
test-retype-unreadable = no la pude leer
button-count-now = Contar tal como está
test-done = { $right } de { $out_of }, { $name }.
test-done-firm = Está firme: { $titles }.
test-done-rework = Para mirar otra vez: { $titles }. Vuelven como ejercicios normales.
test-done-small = { $out_of } ejercicios son una mirada pequeña.
test-done-second = Si quieres, hay una segunda mirada con números nuevos. Un adulto elige el día.
