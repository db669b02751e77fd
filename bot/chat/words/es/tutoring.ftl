# Cambios: vista previa, hecho, deshecho
preview-head = Esto cambiaría:
preview-not-yet = Todavía no ha pasado nada.
changed-head = **Hecho.**
changed-already = Eso ya estaba hecho.
changed-link = Este es el enlace para **{ $name }**. Házselo llegar, por favor; sirve una vez, durante siete días:
left-as-is = Se queda como estaba. No ha cambiado nada.
taken-back-head = **Deshecho:**
taken-back-kept = No todo se pudo deshacer:
cannot-undo-none = No hay nada de las últimas 24 horas que deshacer.
cannot-undo-late = De eso hace más de 24 horas, y ya no se puede deshacer. Una orden nueva lo cambia.
cannot-undo-gone = Eso ya se deshizo, o no llegó a hacerse.
cannot-undo-final = Un mensaje enviado o un teléfono desligado no se pueden deshacer.
cannot-undo-old = Esa vista previa tiene más de un día. Pídelo otra vez, por favor, y verás cómo está todo ahora.
cannot-undo-stale = Mientras tanto ha pasado algo, así que no se cambió nada. Pídelo otra vez, por favor, y verás cómo está todo ahora.
changes-head = Cambiado en las últimas 24 horas, lo más nuevo primero:
button-do = Hacerlo
button-leave-it = Dejarlo
button-undo = Deshacer
button-undo-n = Deshacer { $n }
button-from-now-on = Contarla de ahora en adelante
button-once = Contarla esta vez
button-own-phone = Un chat propio
button-parents-phone = En el teléfono de un padre o una madre
kept-day = El día { $date_day } ya estaba hecho; sus ejercicios se quedan.
kept-step = Lo que ha salido de ello desde entonces se queda.

line-off = { $names }: días libres del { $date_from } al { $date_to } ({ $days ->
    [0] no cae ningún día de clase
    [one] un día de clase
   *[other] { $days } días de clase
  }).
line-off-day = { $names }: día libre, { $date_day }.
line-sick = { $names }: enfermedad del { $date_from } al { $date_to }.
line-sick-day = { $names }: enfermedad, { $date_day }.
line-sick-back = Nada se acumula. Después de tres días de clase fuera o más, el primer día de vuelta es solo de repaso.
line-small = { $name }: días cortos del { $date_from } al { $date_to }. Seis ejercicios de repaso, sin lección.
line-small-day = { $name }: día corto, { $date_day }. Seis ejercicios de repaso, sin lección.
line-small-today = { $name }: hoy pasa a ser un día corto, seis ejercicios de repaso y sin lección. Lo hecho, hecho está.
line-minutes = { $name }: { $minutes } minutos al día (hasta ahora { $before }).
line-morning = { $name }: el día llega a las { $time_at } (hasta ahora a las { $time_before }).
line-evening = { $household }: el resumen de la tarde llega a las { $time_at } (hasta ahora a las { $time_before }).
line-timing-on = Se mide el tiempo del cálculo rápido de { $names } desde la próxima hoja.
line-timing-off = No se mide el tiempo del cálculo rápido de { $names }.
line-day-of = **{ $name }**, { $date_day }:
line-in = Entra: *{ $title }*. { $ask }
line-out = Sale: *{ $title }*. { $ask }
line-more = … y { $count } más.
line-no-lesson = Ese día no hay lección; *{ $title }* espera.
line-new-lesson = La lección de ese día es *{ $title }*.
line-pin = { $name }: un ejercicio de *{ $title }* cada día de clase del { $date_from } al { $date_to }, por ejemplo: { $ask }
line-practice-more = { $names }: más de *{ $title }* en el repaso, hasta el { $date_to }.
line-practice-less = { $names }: menos de *{ $title }* en el repaso, hasta el { $date_to }.
line-practice-none = { $names }: nada de *{ $title }* en el repaso, hasta el { $date_to }.
line-items = { $name }: { $count ->
    [one] un ejercicio de repaso al día
   *[other] { $count } ejercicios de repaso al día
  }, desde el próximo día.
line-items-auto = { $name }: el número de ejercicios vuelve a seguir sus propios tiempos.
line-review = { $name }: solo repaso, sin lección, del { $date_from } al { $date_to }.
line-review-day = { $name }: solo repaso, sin lección, { $date_day }.
line-open = { $names }: clase del { $date_from } al { $date_to }, aunque sea fiesta.
line-open-day = { $names }: clase, { $date_day }, aunque sea fiesta.
line-week = { $name }: clase { $week }; hasta ahora { $week_before }.
line-begin = { $names }: el primer día es { $date_day }.
line-pause = { $names }: en pausa. Ni días ni resúmenes hasta que lo reanudes.
line-resume = { $names }: vuelve a haber días, desde el próximo de clase.
line-lesson = { $name }: ahora viene la lección { $n }, *{ $title }*, desde el principio.
line-lesson-on = { $name }: ahora viene la lección { $n }, *{ $title }*. { $count ->
    [one] La lección anterior se da por vista.
   *[other] Las { $count } lecciones anteriores se dan por vistas.
  }
line-lesson-back = { $name }: de vuelta a la lección { $n }, *{ $title }*. { $count ->
    [one] Se enseña otra vez.
   *[other] Se enseñan otra vez { $count } lecciones.
  }
line-skip = { $names }: la lección { $n }, *{ $title }*, se deja fuera.
line-link = { $names }: junto a *{ $title }* queda tu página { $url }
line-link-all = Para todos los que enseñas: junto a *{ $title }* queda tu página { $url }
line-accept = { $name }, ejercicio { $n }: «{ $typed }» cuenta como buena.
    La pregunta: { $ask }
    La clave dice: { $answer }
line-accept-always = De ahora en adelante, «{ $typed }» cuenta donde la respuesta sea { $answer }, para todos los que enseñas.
line-reject = { $name }, ejercicio { $n }: «{ $typed }» no cuenta.
    La pregunta: { $ask }
    La clave dice: { $answer }
line-counts-first-try = El ejercicio cuenta entonces como resuelto a la primera.
line-counts-later-try = El ejercicio cuenta entonces como resuelto en otro intento.
line-counts-unsolved = El ejercicio sigue contando como no resuelto.
line-digest-was-sent = El resumen de ese día ya salió y se queda como está; */digest* lo muestra de nuevo.
line-excuse = { $name }, el ejercicio { $n } no cuenta: { $ask }
line-note = En el resumen de { $name }, { $date_day }: «{ $text }»
line-tell = Para { $name }: «{ $text }»
line-household = Una familia nueva, **{ $name }**, con la hora de { $zone }.
line-parent = **{ $name }** entra como padre o madre en { $household }, y le preparo un enlace.
line-parent-me = Tú entras también como padre o madre en { $household }.
line-student = **{ $name }** entra como estudiante en { $household }. ¿Dónde trabaja { $name }?
line-student-shared = **{ $name }** entra como estudiante en { $household } y trabaja en el teléfono de un padre o una madre.
line-student-own = **{ $name }** entra como estudiante en { $household } con un chat propio, y le preparo un enlace.
line-second-home = **{ $name }** vive también en { $household }; los padres de allí leen también el resumen.
line-invite = Un enlace para { $name } ({ $household }).
line-invite-again = Un enlace para otro teléfono de { $name } ({ $household }). El de ahora sigue hasta que se una el nuevo.
line-unlink = { $name } ({ $household }): su teléfono queda desligado.
line-zone = { $household }: la hora de { $zone } (hasta ahora { $before }).
line-country = { $household }: son libres las fiestas de { $country }.
line-country-none = { $household }: no se guardan fiestas.

note-timing = Medir el tiempo es opcional. A unos niños les ayuda y a otros les inquieta; sin ello no falta nada. Nunca hay un reloj en marcha, y el tiempo de teclear se descuenta.
note-minutes = El día de { $name } lleva entonces unos { $minutes } minutos (el día de la familia es de { $family }).
note-in-already = { $count ->
    [one] Uno de ellos ya está en el plan.
   *[other] { $count } de ellos ya están en el plan.
  }
note-not-taught = Querías *{ $title }*, pero espera a una lección que aún no se ha visto.
note-test = Toca la prueba { $n }. La abre un padre o una madre, o tú.
note-skip-needed = Hay lecciones posteriores que se apoyan en ella: { $names }.
note-alike = { $count ->
    [one] Lo mismo se escribió y no contó otra vez en los últimos 60 días; eso se queda como está.
   *[other] Lo mismo se escribió y no contó otras { $count } veces en los últimos 60 días; eso se queda como está.
  }
note-final = Una vez enviado, no se puede deshacer.
note-household = Después: */parent* y */student* la llenan. No se envía nada a nadie antes de que un padre o una madre dé permiso.
note-link-comes = Recibes el enlace para hacerlo llegar. A los niños no se les envía nada antes de que un padre o una madre dé permiso.
note-own-phone = Los servicios de chat y muchos lugares tienen reglas de edad, a menudo 13 años o más. Para un niño menor, el camino previsto es el teléfono de sus padres. No se guarda ninguna edad; sigue, por favor, las reglas de donde vives.
note-unlink = Allí no llega nada más. No se puede deshacer, pero */invite* hace un enlace nuevo.

wish-pin = fijado: *{ $title }*
wish-drop = fuera: un ejercicio de *{ $title }*
wish-more = más de *{ $title }*
wish-fewer = menos de *{ $title }*
wish-drop-skill = nada de *{ $title }*
wish-small-day = un día corto
wish-no-lesson = sin lección

# Preguntas
ask-did-you-mean = No conozco «{ $name }». ¿Querías decir uno de estos? No ha cambiado nada.
ask-several = «{ $name }» vale para más de uno. ¿Cuál? No ha cambiado nada.
ask-which-student = ¿Para quién es?
ask-which-household = ¿Qué familia?
ask-which-person = ¿Quién?
ask-which-lesson = «{ $words }» vale para más de una lección. ¿Cuál?
ask-which-answer = { $name } dio varias respuestas al ejercicio { $n }. ¿Cuál de ellas?
ask-which-zone = ¿Qué zona horaria es «{ $zone }»?

# Por qué una orden no se puede seguir
wrong-examples = Se escribe así:
why-no-students = Aún no enseñas a nadie aquí. Primero va una familia, luego su gente.
why-no-households = Aún no hay ninguna familia.
why-no-people = Aún no hay nadie en tus familias.
why-no-such-name = No conozco «{ $name }».
why-no-such-command = No hay ninguna orden «{ $name }».
why-only-a-name = Esa lleva un nombre y nada más.
why-not-a-date = He leído el nombre, pero «{ $words }» no es una fecha que yo conozca.
why-date-missing = ¿Qué día, o de cuándo a cuándo?
why-date-order = El último día va antes que el primero, o más de un año después.
why-date-past = { $date_day } ya pasó.
why-day-over = El día de { $name }, { $date_day }, ya terminó.
why-no-school = { $name } no tiene clase, { $date_day }.
why-no-day-ahead = No hay ningún día de clase a la vista para { $name }. Mira */week* y */off*.
why-no-day-yet = { $name } aún no ha tenido ningún día.
why-no-day-then = { $name } no tuvo día, { $date_day }.
why-not-a-school-weekday = { $date_day } no es día de clase en la semana de { $name }. */week* lo cambia.
why-test-day = { $date_day } es día de prueba para { $name }; no admite otros ejercicios.
why-lesson-missing = ¿De qué lección? Basta una palabra o dos de su título.
why-no-such-lesson = Ninguna lección tiene «{ $words }» en el título.
why-no-such-number = No hay lección { $n }; la última escrita es la { $last }.
why-not-met = { $name } aún no ha visto *{ $title }*, así que no se puede preguntar. */lesson* lo llevaría hasta allí.
why-count = De uno a { $most } ejercicios de una vez.
why-numbers = ¿Qué ejercicios? Los números están en la lista de { $name }: */plan* para el día que viene, */today* para el que corre.
why-one-number = ¿Qué ejercicio? Un número de la lista de { $name }, por favor.
why-no-number = { $name } no tiene ejercicio { $n }, { $date_day }.
why-number-moved = El ejercicio { $n } ya no está en el plan de { $name }, { $date_day }. Mira el plan otra vez, por favor.
why-item-done = { $name } ya hizo el ejercicio { $n }. */excuse* lo saca de la cuenta.
why-item-open = { $name } está ahora mismo en el ejercicio { $n }. */excuse* lo saca de la cuenta.
why-swap-for-what = ¿A cambio de qué? Nombra una lección, por favor.
why-nothing-missed = { $name } no tiene nada sin resolver en el último día.
why-repeat-today = El día de hoy ya está hecho; los ejercicios vuelven desde mañana.
why-cannot-repeat = Los calentamientos no se repiten, solo los ejercicios de lecciones.
why-items = Un número de 0 a { $most }, o *auto*.
why-minutes = Un número de minutos de { $least } a { $most }.
why-sick-days = De uno a 60 días.
why-small-already = El día de { $name } ya es corto.
why-morning = Una hora entre las { $time_first } y las { $time_last }; de noche no se envía nada.
why-morning-after-digest = El resumen llega a las { $time_digest }; el día tiene que llegar antes.
why-evening = Una hora entre las { $time_first } y las { $time_last }.
why-evening-before-push = El día de { $name } llega a las { $time_push }; el resumen tiene que llegar después.
why-timing = ¿*on* (sí) u *off* (no)?
why-language = Hablo *en* (inglés) y *es* (español).
why-week = Nombra los días, como en *lun-jue ligero vie*. Como mucho uno es ligero.
why-begun = { $name } empezó, { $date_day }.
why-paused-already = Eso ya está en pausa.
why-not-paused = Eso no está en pausa.
why-url = La dirección entera de la página al final, por favor, con http:// o https://.
why-no-such-answer = Esa respuesta no es de nadie a quien enseñes.
why-graded-so-already = Esa respuesta ya está calificada así.
why-nothing-to-accept = { $name } no tiene en el ejercicio { $n } ninguna respuesta que no contara.
why-nothing-to-reject = { $name } no tiene en el ejercicio { $n } ninguna respuesta que contara.
why-note-missing = ¿Qué debe decir la nota?
why-words-missing = ¿Qué le digo a { $name }?
why-too-long = Es demasiado largo; { $most } letras como mucho, por favor.
why-no-chat = { $name } no tiene ningún teléfono unido.
why-no-consent = Aún no ha dado permiso ningún padre o madre de { $name }, así que allí no se envía nada.
why-household-name = ¿Cómo se llama la familia?
why-household-exists = Ya tienes una familia { $name }.
why-name-too-long = Un nombre de { $most } letras como mucho, por favor.
why-zone-missing = ¿Qué hora usa? Basta una ciudad, como en *Europe/Madrid*.
why-zone = No conozco la zona horaria «{ $zone }».
why-country = No conozco las fiestas de «{ $country }». Dos letras, por favor, como en *ES*.
why-person-name = ¿Quién? Un nombre de pila o un apodo, por favor; no se guarda más. La familia es { $household }.
why-same-name = Ya hay { $name } en { $household }. Un apodo los distingue.
why-not-linked = { $name } no tiene ningún teléfono unido.
why-doubts = */doubts* no lleva nada detrás.

# Listas
needs-head = Quién te necesita:
needs-none = Ahora mismo no te necesita nadie.
needs-quiet = { $count ->
    [0] {""}
    [one] El otro estudiante va bien.
   *[other] Los otros { $count } van bien.
  }
needs-all-fine = { $count ->
    [one] A tu estudiante le va bien.
   *[other] A los { $count } les va bien.
  }
button-doubts = Dudas ({ $count })
need-consent = aún no ha dado permiso ningún padre o madre
need-phone = no hay ningún teléfono unido
need-blocked = { $name } ha bloqueado el bot; no llega nada
need-doubts = { $count ->
    [one] una respuesta te espera
   *[other] { $count } respuestas te esperan
  }
need-paused = en pausa
need-not-opened = { $count } días seguidos sin abrir
need-left = { $count } días seguidos sin terminar
need-our-fault = el último día no se pudo enviar; fue culpa nuestra
need-misstep = { $count } veces últimamente el mismo tropiezo en *{ $title }*: { $say }
need-hard = { $unsolved } de los últimos { $out_of } ejercicios de repaso sin resolver
need-no-lesson = al final de lo que está escrito; solo días de repaso
need-still-hard = a la familia le costó dos veces: { $names }

days-head = Hoy:
day-row-none = el día de hoy aún no ha llegado
day-row-off = hoy no hay clase
day-row-paused = en pausa
day-row-no-consent = aún no ha dado permiso ningún padre o madre
day-row-no-chat = no hay ningún teléfono unido
day-row-not-begun = aún no ha empezado
day-row-missed = no se pudo enviar; fue culpa nuestra
day-row-pushed = sin abrir todavía
day-row-working = { $done } de { $out_of } ejercicios de repaso hechos, { $first } a la primera
day-row-done = hecho: { $first } de { $out_of } a la primera
day-row-enough = tuvo bastante con { $done } de { $out_of }
day-open = { $open ->
    [one] , uno sin resolver
   *[other] , { $open } sin resolver
  }
day-lesson = Lección: *{ $lesson }*
day-minutes = Unos { $minutes } minutos de trabajo hasta ahora.
day-legend = ● a la primera   ◐ más tarde   ○ sin resolver   – excusado   · por venir   ? te preguntó
day-more = … y { $count } más.
button-plan = El próximo día
button-map = Mapa
button-agenda = Agenda
button-digest-of = Resumen: { $name }
plan-head = **{ $name }**, { $day }
plan-kind-lesson = Lección: *{ $lesson }*
plan-kind-lesson-part = Lección: *{ $lesson }*, día { $sitting }
plan-kind-light = El día ligero: solo repaso.
plan-kind-review-only = Solo repaso, sin lección.
plan-kind-small = Un día corto.
plan-kind-test = Un día de prueba.
plan-kind-gentle = De vuelta tras mucho tiempo: un día suave.
plan-kind-off-season = Un día breve para no perder lo aprendido.
plan-minutes = Unos { $minutes } minutos (el día de la familia es de { $family }).
plan-guided = **Práctica guiada**
plan-review = **Repaso**
plan-notes = Para ese día: { $wishes }
plan-how = Los números van con */drop* y */swap*. El plan aún puede moverse con lo que se conteste hoy.
button-make-small = Día corto
button-no-lesson = Sin lección
map-head = **{ $name }**: cómo está cada cosa
map-next = Próxima lección: *{ $lesson }*
map-steady = firme: { $titles }
map-shaky = flojo: { $titles }
map-none-met = { $count ->
    [one] una lección, aún sin ver
   *[other] { $count } lecciones, ninguna vista aún
  }
map-not-met = sin ver: { $titles }
map-note = Calculado con las respuestas y los días pasados; un niño puede saber más, o menos.
record-head = **{ $name }**, { $day }, ejercicio { $n } de *{ $title }*
record-answer = Clave: { $answer }
record-none = No se escribió nada.
record-hints = { $hints ->
    [one] tras una pista
   *[other] tras { $hints } pistas
  }
record-by-tutor = calificado a mano
record-may = quizá: { $say }
record-read = leído como { $read }
verdict-right = bien
verdict-wrong = no es eso
verdict-form = la cantidad es esa, la forma otra
verdict-unit = falta la unidad
verdict-unreadable = no se puede leer
verdict-help = pidió ayuda
outcome-first-try = Resuelto a la primera.
outcome-later-try = Resuelto en otro intento.
outcome-unsolved = Sin resolver.
outcome-untouched = Sin llegar.
outcome-excused = Excusado.
button-accept-n = Aceptar «{ $typed }»
button-reject-n = No cuenta: «{ $typed }»
button-excuse = Excusar
pace-head = **{ $name }**
pace-lesson = En la lección { $n } de { $out_of }: *{ $lesson }*
pace-lesson-end = Al final de lo que está escrito ({ $written } lecciones).
pace-written = Escritas hasta ahora: { $written } de { $out_of } lecciones.
pace-week = Clase { $week }.
pace-taken = Días de lección en las últimas semanas: tuvieron lugar { $taken } de { $planned }.
pace-left = Días de lección que quedan en lo escrito: { $left }.
pace-finish = Lo escrito puede quedar terminado entre { $early } y { $late }, si todo sigue así. Es una previsión, no una promesa.
people-household = **{ $name }** · { $zone } · resumen a las { $at } · { $agreed ->
    [yes] hay permiso de un padre o una madre
   *[no] aún no hay permiso de un padre o una madre
  }
people-empty = nadie todavía
role-parent = padre o madre
role-student = estudiante
role-tutor = tutor
phone-own = teléfono unido
phone-shared = en el teléfono de un padre o una madre
phone-none = sin unir
doubt-asked = **{ $student }** pregunta por un ejercicio de *{ $title }* ({ $day }):
doubt-unreadable = No pude leer las respuestas de **{ $student }** a un ejercicio de *{ $title }* ({ $day }):
doubt-typed = Escrito: { $typed }
doubt-key = Clave: { $answer }
doubt-many = A { $count } de los que enseñas no les salió este tipo últimamente. Puede que sea el ejercicio.
doubts-left = { $count ->
    [0] {""}
    [one] Espera una más.
   *[other] Esperan { $count } más.
  }
doubts-none = No espera ninguna duda.
button-seen = Visto
agenda-head = **{ $name }**: para la clase en vivo
agenda-well = Salió bien: { $titles }
agenda-none = Últimamente no quedó nada sin resolver. Buen momento para algo nuevo.
agenda-point = { $n }. **{ $title }**
agenda-typed = { $ask } Escribió: { $typed }
agenda-fresh = Uno nuevo para hacer juntos: { $ask } (respuesta: { $answer })
from-tutor = De { $tutor }: { $text }
from-tutor-for = De { $tutor }, para { $name }: { $text }

# Ayuda
commands-head-t = Lo que puedes escribir. Cada cambio se muestra antes, y se puede deshacer durante 24 horas. Los nombres se pueden acortar: *wr* por Wren, *todos* por todos.
commands-head-f = Lo que puedes escribir. Cada cambio se muestra antes, y se puede deshacer durante 24 horas.
commands-more = */help* y el nombre de una orden muestra más ejemplos.
group-look = Mirar
group-next = El próximo día
group-when = Días y horas
group-course = El curso
group-answers = Respuestas
group-words = Palabras
group-people = Familias y personas
group-day = El día
group-family = Tu familia
group-all = Y además
command-day = lo que toca hoy
command-paper = la hoja entera, para hacer en papel
command-small = un día corto
command-enough = bastante por hoy
command-hint = una pista para este ejercicio
command-tutor = preguntar al tutor por este ejercicio
command-back = devolver el teléfono
command-needs = quién me necesita ahora
command-today = cómo va hoy
command-plan = qué tiene el próximo día, con números
command-item = un ejercicio con todo lo que se escribió
command-map = qué está firme, flojo o sin ver
command-pace = por dónde va, y cuándo puede terminar
command-agenda = tres cosas para la clase en vivo
command-doubts = respuestas que esperan tu palabra
command-digest = el resumen de cualquier día
command-add = más ejercicios de una lección
command-drop = dejar ejercicios fuera
command-swap = otro ejercicio en lugar de uno
command-repeat = los ejercicios de hoy otra vez, con otros números
command-pin = un ejercicio de un tipo cada día por un tiempo
command-practice = más, menos o nada de una lección en el repaso
command-items = cuántos ejercicios de repaso al día
command-minutes = minutos al día
command-review = un día sin lección
command-off = días libres
command-sick = días de enfermedad
command-open = clase aunque sea fiesta
command-week = qué días de la semana hay clase
command-morning = cuándo llega el día
command-evening = cuándo llega el resumen
command-begin = el primer día
command-pause = pausa
command-resume = seguir tras una pausa
command-lesson = qué lección viene ahora
command-skip = dejar fuera una lección
command-link = una página tuya junto a una lección
command-accept = contar una respuesta
command-reject = no contar una respuesta
command-excuse = un ejercicio que no debe contar
command-note = una palabra en el resumen de la tarde
command-tell = un mensaje a un estudiante o a sus padres
command-people = familias, personas y teléfonos
command-household = una familia nueva
command-parent = entra un padre o una madre
command-student = entra un estudiante
command-invite = un enlace para el teléfono de alguien
command-unlink = desligar un teléfono
command-zone = la zona horaria de una familia
command-country = qué fiestas se guardan
command-timing = medir o no el tiempo del cálculo rápido
command-hand = pasar el teléfono a un niño
command-privacy = qué se guarda, y por qué
command-agree = leer y dar permiso
command-withdraw = pararlo todo
command-undo = deshacer el último cambio
command-changes = lo que cambié últimamente
command-language = idioma
command-help = lo que puedo escribir
command-more = más práctica, cuando el día está hecho
week-light = { $day } (ligero)
line-erase = Para { $household } todo se para ahora. { $date_on } se borra para siempre todo lo que se guarda: respuestas, fotos, nombres.
note-erase = Hasta ese día, */keep* lo deja sin efecto. Las copias de seguridad hechas antes caducan a su tiempo. */export* te da antes todo lo guardado.
why-erase-asked = Eso ya está pedido. */keep* lo deja sin efecto.
why-nothing-to-keep = No se va a borrar nada.
command-export = todo lo que se guarda, en un archivo
command-erase = borrarlo todo, dentro de una semana
command-keep = al final no borrar

# Lo que vale por un tiempo
holds-head = Para **{ $name }** vale esto:
holds-none = Para { $name } no vale nada más que el plan.
holds-days = del { $date_from } al { $date_to }
holds-days-one = { $date_from }
holds-days-open = desde el { $date_from }
holds-pin = fijado: *{ $title }*, { $key_days }
holds-drop = fuera: un ejercicio de *{ $title }*, { $key_days }
holds-drop-skill = nada de *{ $title }*, { $key_days }
holds-more = más de *{ $title }*, { $key_days }
holds-fewer = menos de *{ $title }*, { $key_days }
holds-days-off = días libres, { $key_days }
holds-sick = enfermedad, { $key_days }
holds-school-on = clase aunque sea fiesta, { $key_days }
holds-small-day = día corto, { $key_days }
holds-no-lesson = solo repaso, { $key_days }
holds-leave-out = fuera: la lección *{ $title }*, { $key_days }
holds-link = tu página junto a *{ $title }*: { $url }, { $key_days }
holds-note = una nota en el resumen: «{ $text }», { $key_days }
holds-own-item = un ejercicio tuyo, *{ $title }*, { $key_days }
holds-read-as = «{ $typed }» cuenta, { $key_days }
button-end-n = Terminar { $n }
line-end = Esto termina antes; lo que hizo hasta ahora se queda:
why-no-such-wish = Eso no vale para nadie a quien enseñes. */holds* muestra lo que vale.
command-holds = lo que vale por un tiempo
command-end = terminar antes algo de eso
family-changed = { $name } ({ $household }) ha cambiado esto:
family-took-back = { $name } ({ $household }) ha deshecho esto:
